import {
  EDGE_NAMES,
  HALF_NAMES,
  LEVELS,
  PIECE_NAMES,
  edgeAt,
  levelName,
  middleSize,
  drawnSide,
  renderPhrase,
  tellIn,
  timesWords,
  wornOnce,
  wornPair,
  wornTimes,
  type Edge,
  type EdgeKind,
  type NestedPiece,
  type Pattern,
  type Phrase,
} from '../../garment/index.ts';
import { pathLength } from '../../geometry/index.ts';
import { Amount } from '../parts/amount.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { follow, joinByLengths, joinEdges, putEdge, putPiece } from '../../desk/index.ts';
import type { ChangePattern } from './change-pattern.ts';
import { RolePick } from './role-pick.tsx';

const KINDS: Record<EdgeKind, string> = {
  seam: 'sewn to another edge',
  dart: 'leg of a dart',
  fold: 'on the fold of the cloth',
  hem: 'hem',
  opening: 'opening that fastens',
  free: 'finished by itself',
};

/** The usual ways to cut a piece, and how this one is cut, by what they are called. */
function waysToCut(
  piece: NestedPiece,
  say: (words: Phrase) => string,
): ReadonlyMap<string, NestedPiece['worn']> {
  const drawn = drawnSide(piece);
  const ways = [
    piece.worn,
    wornOnce(),
    wornPair(drawn),
    wornTimes(2),
    wornPair(drawn, 2),
    wornOnce('left'),
    wornOnce('right'),
  ];
  return new Map(ways.map((worn) => [say(timesWords({ ...piece, worn })), worn]));
}

interface Props {
  readonly pattern: Pattern;
  readonly piece: NestedPiece;
  readonly edge: string | null;
  readonly onEdge: (id: string) => void;
  readonly change: ChangePattern;
  readonly show: 'in' | 'cm';
  readonly joining: { piece: string; edge: string } | null;
  readonly onJoining: (from: { piece: string; edge: string } | null) => void;
}

/** What is said of a piece and of the edge pointed at; everything can be corrected. */
export function PieceFacts(props: Props) {
  const { pattern, piece, change } = props;
  const follower = pattern.followers.find((f) => f.piece === piece.id);
  const edge = piece.edges.find((e) => e.id === props.edge);
  const say = (words: Phrase): string => renderPhrase(words, tellIn(props.show));
  const ways = waysToCut(piece, say);
  const put = (part: Partial<NestedPiece>, said: string, merge?: string) =>
    change((p) => putPiece(p, piece.id, part), said, merge);
  return (
    <div className="stack">
      <div className="row about">
        <label className="field">
          <span className="label">Name of the piece</span>
          <input
            type="text"
            value={piece.name}
            onChange={(e) => put({ name: e.target.value }, 'Renamed a piece', `piece/${piece.id}`)}
          />
        </label>
        <RolePick
          label="Which piece it is"
          role={piece.role}
          names={PIECE_NAMES}
          onRole={(role) => put({ role }, `${piece.name}: ${PIECE_NAMES[role]}`)}
        />
        <RolePick
          label="Worn"
          role={piece.half}
          names={HALF_NAMES}
          onRole={(half) => put({ half }, `${piece.name}: worn ${HALF_NAMES[half]}`)}
        />
        <label className="field">
          <span className="label">Cloth</span>
          <select
            value={piece.cloth}
            onChange={(e) =>
              put({ cloth: e.target.value as NestedPiece['cloth'] }, `${piece.name}: another cloth`)
            }
          >
            {(['shell', 'lining', 'interfacing', 'contrast'] as const).map((c) => (
              <option key={c}>{c}</option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">Cut</span>
          <select
            value={say(timesWords(piece))}
            onChange={(e) => {
              const worn = ways.get(e.target.value);
              if (worn) put({ worn }, `${piece.name}: how many to cut`);
            }}
          >
            {[...ways.keys()].map((words) => (
              <option key={words}>{words}</option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">Repeats another piece</span>
          <select
            value={follower ? `${follower.role}/${follower.parent}` : ''}
            onChange={(e) => {
              const [role, parent] = e.target.value.split('/');
              change(
                (p) => follow(p, piece.id, parent ?? null, (role || 'lining') as 'lining'),
                `${piece.name}: what it repeats`,
              );
            }}
          >
            <option value="">no</option>
            {(['lining', 'facing', 'interfacing', 'pocket'] as const).map((role) => (
              <optgroup key={role} label={`${role} of`}>
                {pattern.pieces
                  .filter((p) => p.id !== piece.id)
                  .map((p) => (
                    <option key={p.id} value={`${role}/${p.id}`}>
                      {role} of {p.name}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        </label>
      </div>
      {edge ? (
        <EdgeFacts {...props} edgeData={edge} />
      ) : (
        <p className="small">Point at an edge, or choose one: </p>
      )}
      <ul className="row edge-list" aria-label="Edges">
        {piece.edges.map((e) => (
          <li key={e.id}>
            <button
              type="button"
              className="act"
              aria-pressed={e.id === props.edge}
              onClick={() => props.onEdge(e.id)}
            >
              {e.name} <small>{e.kind}</small>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function EdgeFacts({
  pattern,
  piece,
  edgeData: edge,
  change,
  show,
  joining,
  onJoining,
}: Props & { edgeData: Edge<'nest'> }) {
  const mid = middleSize(pattern);
  const put = (part: Partial<Edge<'nest'>>, say: string, merge?: string) =>
    change((p) => putEdge(p, piece.id, edge.id, part), say, merge);
  const from = joining && edgeAt(pattern, joining)?.edge;
  const byLengths = joining && joinByLengths(pattern, joining, { piece: piece.id, edge: edge.id });
  return (
    <div className="row about edge-facts">
      <label className="field">
        <span className="label">Edge</span>
        <input
          type="text"
          value={edge.name}
          onChange={(e) => put({ name: e.target.value }, 'Renamed an edge', `edge/${edge.id}`)}
        />
      </label>
      <RolePick
        label="Which edge it is"
        role={edge.role}
        names={EDGE_NAMES}
        onRole={(role) => put({ role }, `${edge.name}: ${EDGE_NAMES[role]}`)}
      />
      <label className="field">
        <span className="label">How it is finished</span>
        <select
          value={edge.kind}
          onChange={(e) =>
            put({ kind: e.target.value as EdgeKind }, `${edge.name}: ${KINDS[e.target.value as EdgeKind]}`)
          }
        >
          {Object.entries(KINDS).map(([kind, say]) => (
            <option key={kind} value={kind}>
              {say}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span className="label">Its first corner lies at the</span>
        <select
          value={edge.from}
          onChange={(e) => put({ from: e.target.value }, `${edge.name}: begins at the ${e.target.value}`)}
        >
          {[...new Set([edge.from, ...LEVELS.map((l) => l.level)])].map((level) => (
            <option key={level} value={level}>
              {levelName(level)}
            </option>
          ))}
        </select>
      </label>
      <LengthField
        label="Allowance"
        mm={edge.allowance}
        show={show}
        narrow
        signed
        onAmount={(mm) => put({ allowance: Math.max(0, mm) }, `${edge.name}: allowance`)}
      />
      <p className="small">
        Length in size {pattern.chart.sizes[mid]?.label}:{' '}
        <Amount mm={pathLength(edge.path[mid]!)} show={show} />
      </p>
      {from && (joining.piece !== piece.id || joining.edge !== edge.id) ? (
        <button
          type="button"
          className="act main"
          onClick={() => {
            const name = `${from.name} to ${edge.name}`;
            change(
              (p) =>
                joinEdges(
                  p,
                  `seam-${joining.piece}-${joining.edge}-${edge.id}`,
                  { piece: joining.piece, edge: joining.edge },
                  { piece: piece.id, edge: edge.id, backwards: true },
                  name,
                ),
              `Joined ${name}`,
            );
            onJoining(null);
          }}
        >
          {byLengths === 'plain'
            ? `Sew ${from.name} to this edge`
            : `They are not as long: sew ${from.name} to this edge ${byLengths}`}
        </button>
      ) : (
        <button
          type="button"
          className="act"
          aria-pressed={Boolean(joining)}
          onClick={() => onJoining(joining ? null : { piece: piece.id, edge: edge.id })}
        >
          {joining ? 'Now point at the other edge' : 'Sew it to …'}
        </button>
      )}
    </div>
  );
}
