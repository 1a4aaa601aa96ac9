import { tellTrouble } from '../words/fault.ts';
import { useEffect, useMemo, useState } from 'react';
import type { Corrections, PieceCorrection } from '../../exchange/index.ts';
import {
  GARMENT_KINDS,
  garmentKind,
  renderPhrase,
  tellIn,
  type Finding,
  type GarmentKind,
} from '../../garment/index.ts';
import type { Caller } from '../call/index.ts';
import { go, hrefTo } from '../station/route.ts';
import { pageTell } from '../station/page-tell.ts';
import { usualUnit } from '../station/usual-unit.ts';
import { sayHere } from '../station/say-here.ts';
import { store } from '../store/use-store.ts';
import { AskAnswers } from './ask-answers.tsx';
import { FoundCard } from './found-card.tsx';
import { DoubtAsked } from './doubt-asked.tsx';
import { doubtsOf, withDoubtAnswer } from './doubts.ts';
import { allowanceWords } from './import-choices.ts';
import { ImportFindings } from './import-findings.tsx';
import { answered, stillMissing, type Answers } from './import-questions.ts';
import type { Found, ReadDoings } from './read-worker.ts';
import { ScaleAsked } from './scale-asked.tsx';
import { SeamTicks } from './seam-ticks.tsx';
import { useFoundAgain } from './use-found-again.ts';

/** What a person said of the pattern as a whole; it outlives a correction of scale or pages. */
export interface About {
  readonly name: string;
  /** Absent: what it is taken for. */
  readonly garment?: GarmentKind;
  readonly answers: Answers;
}

interface Props {
  readonly about: About;
  readonly onAbout: (part: Partial<About>) => void;
  readonly found: Found;
  readonly reader: Caller<ReadDoings>;
  readonly scaleBy: string;
  readonly onScale: (words: string) => void;
}

/** What each open question is called on the button that waits for it. */
const MISSING: Readonly<Record<keyof Answers, string>> = {
  included: 'the printed lines',
  cloth: 'the cloth',
  wearer: 'for whom',
  bustDifference: 'the bust',
};

/** How long nothing is said before the pattern is made anew to hear what it has to say, ms. */
const PAUSE_MS = 250;

/** What was found in a file: the questions first, then everything it was taken for with its reason, each to be corrected. */
export function FoundSheet({ found, reader, scaleBy, onScale, about, onAbout }: Props) {
  const show = usualUnit(navigator.languages);
  const { name, answers } = about;
  const [pieces, setPieces] = useState<Readonly<Record<string, PieceCorrection>>>({});
  const { now, busy: looking } = useFoundAgain(found, reader, pieces);
  const garment = about.garment ?? now.garment.offered;
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [taken, setTaken] = useState<readonly string[]>([]);
  const [sizes, setSizes] = useState<Readonly<Record<string, string>>>({});
  const [made, setMade] = useState<readonly Finding[] | null>(null);
  const [busy, setBusy] = useState(false);
  const doubts = doubtsOf(now.pieces, pieces);
  const missing = stillMissing(garment, answers);

  const said = useMemo(
    (): Corrections => ({
      name: name.trim() || found.name,
      about: `Read from ${found.name}.${linesWords(answers.included)}`,
      garment,
      pieces,
      ...answered(garment, answers),
      sizes,
      seams: { reject: refused, accept: taken },
    }),
    [name, found.name, garment, pieces, answers, sizes, refused, taken],
  );
  const whole = missing.length === 0;
  useEffect(() => {
    if (!whole) {
      setMade(null);
      return;
    }
    let wanted = true;
    const soon = setTimeout(() => {
      reader
        .call('make', said)
        .then(({ findings }) => wanted && setMade(findings))
        // Told when it is to be kept.
        .catch(() => wanted && setMade([]));
    }, PAUSE_MS);
    return () => {
      wanted = false;
      clearTimeout(soon);
    };
  }, [whole, said, reader]);

  function keep(): void {
    if (missing[0]) {
      document.querySelector<HTMLElement>(`#ask-${missing[0]} input:not(:disabled)`)?.focus();
      return;
    }
    setBusy(true);
    reader
      .call('make', said)
      .then(({ pattern }) => {
        const fresh = { ...pattern, id: crypto.randomUUID() };
        store.create('pattern', fresh, `Brought in from ${found.name}`);
        go(hrefTo('patterns', fresh.id));
      })
      .catch((error: unknown) =>
        sayHere(`It could not be made into a pattern. ${tellTrouble(error, tellIn(show))}`, 'trouble'),
      )
      .finally(() => setBusy(false));
  }

  const correct = (id: string, part: PieceCorrection): void =>
    setPieces({ ...pieces, [id]: { ...pieces[id], ...part } });
  return (
    <>
      <AskAnswers
        asks={found.asks}
        doubled={found.doubled}
        garment={garment}
        answers={answers}
        onAnswers={(next) => onAbout({ answers: next })}
        show={show}
      />
      <section className="sheet row about" aria-label="The pattern">
        <label className="field wide">
          <span className="label">Name of the pattern</span>
          <input type="text" value={name} onChange={(e) => onAbout({ name: e.target.value })} />
        </label>
        <label className="field wide">
          <span className="label">Garment</span>
          <select
            value={garment}
            aria-describedby="garment-why"
            onChange={(e) => onAbout({ garment: e.target.value as GarmentKind })}
          >
            {GARMENT_KINDS.map((g) => (
              <option key={g}>{g}</option>
            ))}
          </select>
          <small id="garment-why">
            Taken for {garmentKind(now.garment.offered).called}.{' '}
            {renderPhrase(now.garment.evidence, tellIn(show))}
          </small>
        </label>
      </section>
      <ScaleAsked found={found} scaleBy={scaleBy} onScale={onScale} />
      <DoubtAsked
        doubts={doubts}
        pieces={now.pieces}
        wearer={answers.wearer ?? 'woman'}
        busy={looking}
        onAnswer={(doubt, answer) => setPieces(withDoubtAnswer(pieces, doubt, answer))}
      />
      <FoundPieces
        found={{ ...found, ...now }}
        pieces={pieces}
        sizes={sizes}
        onPiece={correct}
        onSize={(id, label) => setSizes({ ...sizes, [id]: label })}
      />
      <SeamTicks
        seams={now.seams}
        refused={refused}
        taken={taken}
        onRefused={setRefused}
        onTaken={setTaken}
      />
      <ImportFindings read={found.summary.findings} made={whole ? made : null} show={show} />
      <div className="row">
        <button type="button" className="act main" disabled={busy} onClick={keep}>
          {busy
            ? 'Making the pattern …'
            : whole
              ? 'Keep this pattern'
              : `Still to be said: ${missing.map((ask) => MISSING[ask]).join(', ')}`}
        </button>
        <a className="act" href={hrefTo('patterns')}>
          Do not keep it
        </a>
      </div>
      <p className="small">
        {doubts.length > 0 &&
          `${doubts.length} of what the pieces and edges are is still in doubt: unanswered, each is kept as what it is likeliest to be, and the pattern says so until you do. `}
        Levels, edges, seams and what repeats what can be corrected afterwards by pointing.
      </p>
    </>
  );
}

/** What the printed lines were said to be, for whoever opens the pattern later. */
function linesWords(included: number | undefined): string {
  if (included === undefined) return '';
  return included === 0
    ? ' Its stitching lines were taken as they are drawn.'
    : ` Its printed lines were said to be cutting lines with ${allowanceWords(included)} of allowance inside them.`;
}

/** Sizes and pieces, each to be named and corrected. */
function FoundPieces(props: {
  found: Found;
  pieces: Readonly<Record<string, PieceCorrection>>;
  sizes: Readonly<Record<string, string>>;
  onPiece: (id: string, part: PieceCorrection) => void;
  onSize: (id: string, label: string) => void;
}) {
  const { found, pieces, sizes, onPiece, onSize } = props;
  return (
    <section className="sheet stack" aria-labelledby="found-head">
      <h2 id="found-head">
        {found.pieces.length} {found.pieces.length === 1 ? 'piece' : 'pieces'} in {found.sizes.length}{' '}
        {found.sizes.length === 1 ? 'size' : 'sizes'}
      </h2>
      <div className="row about">
        {found.sizes.map((size) => (
          <label key={size.id} className="field" title={renderPhrase(size.evidence, pageTell())}>
            <span className="label">Size</span>
            <input
              type="text"
              className="short"
              value={sizes[size.id] ?? size.label}
              onChange={(e) => onSize(size.id, e.target.value)}
            />
          </label>
        ))}
      </div>
      {found.sizes[0] && (
        <p className="small">Smallest first, by girth. {renderPhrase(found.sizes[0].evidence, pageTell())}</p>
      )}
      <ul className="cards">
        {found.pieces.map((p) => (
          <FoundCard key={p.id} piece={p} said={pieces[p.id] ?? {}} onSay={(part) => onPiece(p.id, part)} />
        ))}
      </ul>
    </section>
  );
}
