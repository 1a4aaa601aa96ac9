import { useState } from 'react';
import { fromShoulder, garmentKind, keyWord, renderPhrase, t } from '../../garment/index.ts';
import type { Pattern, Phrase, Tell } from '../../garment/index.ts';
import type { CatalogueEntry } from '../worker/entry-list.ts';
import { speaksOf } from './speaks-of.ts';

interface Props {
  readonly catalogue: readonly CatalogueEntry[];
  readonly pattern: Pattern;
  readonly tell: Tell;
  readonly onPick: (entry: CatalogueEntry) => void;
  readonly onLeave?: () => void;
}

/** Chapters that make no sense for a garment that has no such part. */
function fits(entry: CatalogueEntry, pattern: Pattern): boolean {
  if (entry.group === 'trousers') return garmentKind(pattern.garment).legs;
  if (['shoulder', 'neckline', 'armhole', 'bust', 'sleeve', 'back'].includes(entry.group))
    return fromShoulder(pattern.garment);
  return true;
}

/** The catalogue by chapters in the order a fitter works, with a word to look for. */
export function AlterList({ catalogue, pattern, tell, onPick, onLeave }: Props) {
  const [word, setWord] = useState('');
  const say = (words: Phrase): string => renderPhrase(words, tell);
  const groupWord = (group: string): Phrase => t`${keyWord('group', group)}`;
  const shown = catalogue.filter(
    (e) =>
      fits(e, pattern) && speaksOf(say(t`${e.name} ${e.when} ${groupWord(e.group)} ${e.alsoCalled}`), word),
  );
  const groups = [...new Set(shown.map((e) => e.group))];
  return (
    <>
      <div className="row spread">
        <h2>Which alteration?</h2>
        {onLeave && (
          <button type="button" className="act quiet" onClick={onLeave}>
            Back to the list
          </button>
        )}
      </div>
      <label className="field">
        <span className="label">What is wrong, in a word</span>
        <input
          type="search"
          value={word}
          placeholder="waist, gapes, shoulder …"
          onChange={(e) => setWord(e.target.value)}
        />
      </label>
      {shown.length === 0 && (
        <p className="small">
          {catalogue.length === 0
            ? 'Fetching the catalogue …'
            : 'Nothing of that name. Try another word for it.'}
        </p>
      )}
      {groups.map((group) => (
        <details key={group} className="chapter" open={word.trim() !== '' || group === 'length'}>
          <summary>
            <h3>{say(groupWord(group))}</h3>
          </summary>
          <ul>
            {shown
              .filter((e) => e.group === group)
              .map((e) => (
                <li key={e.id}>
                  <button type="button" className="act entry" onClick={() => onPick(e)}>
                    <strong>{say(e.name)}</strong>
                    <small>{say(e.when)}</small>
                  </button>
                </li>
              ))}
          </ul>
        </details>
      ))}
    </>
  );
}
