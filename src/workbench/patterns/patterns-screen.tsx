import { tellTrouble } from '../words/fault.ts';
import { pageTell } from '../station/page-tell.ts';
import { useState } from 'react';
import type { Pattern } from '../../garment/index.ts';
import { PiecesRow } from '../drawing/pieces-row.tsx';
import { Empty } from '../parts/empty.tsx';
import { go, hrefTo } from '../station/route.ts';
import { SAMPLE_CARDS } from '../begin/sample-cards.ts';
import { SampleSketch } from '../begin/sample-sketch.tsx';
import { keepSample } from '../begin/wardrobe.ts';
import { sayHere } from '../station/say-here.ts';
import { useDoc, useList } from '../store/use-store.ts';
import { BringIn } from './bring-in.tsx';
import { FromFile } from './from-file.tsx';
import { PasteTable } from './paste-table.tsx';
import { PatternSheet } from './pattern-sheet.tsx';

/** The patterns one has, and the ways to get one more. */
export default function PatternsScreen({ id }: { id?: string }) {
  const held = useDoc('pattern', id);
  if (id === 'from-a-file') return <FromFile />;
  if (id && held) return <PatternSheet held={held} />;
  return <Cupboard missing={Boolean(id)} />;
}

function Cupboard({ missing }: { missing: boolean }) {
  const patterns = useList('pattern');
  return (
    <div className="stack">
      <div className="row spread">
        <h1>Patterns</h1>
        <div className="row">
          <PasteTable />
          <a className="act" href={hrefTo('patterns', 'from-a-photo')}>
            Trace a photograph
          </a>
          <BringIn />
        </div>
      </div>
      {missing && <p className="said">That pattern is not kept here (any more).</p>}
      {patterns.length === 0 && (
        <Empty title="No pattern in the cupboard yet">
          <p>
            Take one of the sample patterns below, bring in a file you bought (PDF, SVG or DXF with all sizes
            nested), or type the table from the envelope: a table alone is enough for a plan.
          </p>
        </Empty>
      )}
      <ul className="cards">
        {patterns.map(({ id, doc }) => (
          <PatternCard key={id} pattern={doc} />
        ))}
      </ul>
      <Samples have={patterns.map((p) => p.id)} />
    </div>
  );
}

/** “10 sizes, Bust 80 to 122”: what the labels begin with alike is said once. */
function sizesWords(labels: readonly string[]): string {
  const [first = '', last = ''] = [labels[0], labels.at(-1)];
  const alike = /^.*\s/.exec(first)?.[0] ?? '';
  const end = labels.every((l) => l.startsWith(alike)) ? last.slice(alike.length) : last;
  return labels.length === 1 ? `one size, ${first}` : `${labels.length} sizes, ${first} to ${end}`;
}

function PatternCard({ pattern }: { pattern: Pattern }) {
  const { sizes } = pattern.chart;
  return (
    <li className="sheet card">
      <a href={hrefTo('patterns', pattern.id)}>{pattern.name}</a>
      <PiecesRow pattern={pattern} />
      <p className="small">
        {sizesWords(sizes.map((z) => z.label))} ·{' '}
        {pattern.pieces.length === 0 ? 'table only' : `${pattern.pieces.length} pieces`}
      </p>
      <p>{pattern.about}</p>
    </li>
  );
}

function Samples({ have }: { have: readonly string[] }) {
  const [busy, setBusy] = useState('');
  const left = SAMPLE_CARDS.filter((s) => !have.includes(s.id));
  if (left.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="samples-head">
      <h2 id="samples-head">Sample patterns</h2>
      <ul className="cards">
        {left.map((s) => (
          <li key={s.id} className="sheet card plain">
            <h3>{s.name}</h3>
            <SampleSketch id={s.id} />
            <p className="small">{s.say}</p>
            <button
              type="button"
              className="act"
              disabled={busy !== ''}
              onClick={() => {
                setBusy(s.id);
                keepSample(s.id)
                  .then((id) => go(hrefTo('patterns', id)))
                  .catch((error: unknown) =>
                    sayHere(`It could not be drafted. ${tellTrouble(error, pageTell())}`, 'trouble'),
                  )
                  .finally(() => setBusy(''));
              }}
            >
              {busy === s.id ? 'Drafting …' : 'Put it in the cupboard'}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
