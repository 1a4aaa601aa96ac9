import { CATALOGUE, applyStep } from '../src/alter/index.ts';
import type { Alteration, AlterStep, StepOutcome } from '../src/alter/index.ts';
import { chainLength, edgeAt, garmentAtSize } from '../src/garment/index.ts';
import type { EdgeRef, Garment, ParamValue, Pattern, Seam } from '../src/garment/index.ts';
import { pathLength } from '../src/geometry/index.ts';
import { girthAt } from '../src/measure/index.ts';
import { areaOf, edgesUnder, layOn, roundOf } from './imported-case.ts';
import type { Outline } from './imported-case.ts';

/** Girths, lengths and walks of the two agree within this, mm. */
const EQUAL_MM = 0.5;

/** Two amounts for every entry, of both signs where it takes them; pieces, edges and darts are left to the entry where it can choose. */
function amounts(entry: Alteration, which: 0 | 1): Record<string, ParamValue> {
  const out: Record<string, ParamValue> = {};
  for (const param of entry.params) {
    if (param.kind === 'choice') out[param.id] = param.choices[which % param.choices.length]!.id;
    else if (param.kind === 'share') out[param.id] = which === 0 ? 0.5 : 0.4;
    else if (param.kind === 'length' || param.kind === 'angle') {
      const first = param.default === 0 ? Math.min(8, param.max) : param.default;
      const second = -0.6 * first >= param.min && -0.6 * first <= param.max ? -0.6 * first : 0.6 * first;
      out[param.id] = which === 0 ? first : second;
    }
  }
  return out;
}

interface Pair {
  readonly native: Garment;
  readonly brought: Garment;
  /** Lengths may have been so far off as they were brought, mm: nothing in a file, a little in a photograph. */
  readonly off: number;
  /** Brought piece and its edges by the sample's. */
  readonly pieces: ReadonlyMap<string, { readonly id: string; readonly under: ReadonlyMap<string, string> }>;
}

const drawn = (garment: Garment, id: string): Outline => garment.pieces.find((p) => p.id === id)!;

/** The sample and what was read of it in the middle size, piece by piece. */
function pairOf(native: Pattern, pattern: Pattern, off: number): Pair {
  const size = Math.floor(native.chart.sizes.length / 2);
  const [a, b] = [garmentAtSize(native, size), garmentAtSize(pattern, size)];
  const free = new Set(b.pieces.map((p) => p.id));
  const pieces = new Map<string, { id: string; under: ReadonlyMap<string, string> }>();
  for (const piece of a.pieces) {
    const near = [...free]
      .map((id) => ({ id, laid: layOn(piece, drawn(b, id)) }))
      .toSorted((p, q) => p.laid.apart - q.laid.apart)[0];
    if (!near || near.laid.apart > EQUAL_MM) throw new Error(`${piece.name} was not found again`);
    free.delete(near.id);
    pieces.set(piece.id, { id: near.id, under: edgesUnder(piece, drawn(b, near.id), near.laid) });
  }
  return { native: a, brought: b, off, pieces };
}

/** How much longer chain a is than chain b, mm; undefined where an edge is missing. */
function extra(garment: Garment, seam: Seam): number | undefined {
  if (![...seam.a, ...seam.b].every((ref) => edgeAt(garment, ref))) return undefined;
  return chainLength(garment, seam.a) - chainLength(garment, seam.b);
}

const keyOf = (refs: readonly EdgeRef[]): string =>
  [...new Set(refs.map((r) => `${r.piece} ${r.edge}`))].toSorted().join();

/** The sample's chain in edges of what was brought; empty where one is not there. */
function broughtKey(pair: Pair, refs: readonly EdgeRef[]): string {
  const ids = refs.flatMap((r) => {
    const to = pair.pieces.get(r.piece);
    return [...(to?.under ?? [])].filter(([, id]) => id === r.edge).map(([id]) => `${to!.id} ${id}`);
  });
  return [...new Set(ids)].toSorted().join();
}

interface Difference {
  /** How far the two are apart, mm; Infinity where one has what the other lacks. */
  readonly mm: number;
  readonly words: string;
}

/** Where the two results differ by more than the bound; empty when they are equal. */
function differences(pair: Pair, own: StepOutcome, brought: StepOutcome): Difference[] {
  const out: Difference[] = [];
  const apart = (mm: number, words: string): void => {
    out.push({ mm: Math.abs(mm), words });
  };
  for (const { level } of pair.native.levels) {
    const a = girthAt(own.garment, level)?.girth;
    const b = girthAt(brought.garment, level)?.girth;
    const [a0, b0] = [girthAt(pair.native, level)?.girth, girthAt(pair.brought, level)?.girth];
    if (a === undefined || a0 === undefined) continue;
    if (b === undefined || b0 === undefined) apart(Infinity, `girth at ${level}: none`);
    else if (Math.abs(a - a0 - (b - b0)) > EQUAL_MM)
      apart(a - a0 - (b - b0), `girth at ${level}: ${(a - a0).toFixed(1)} and ${(b - b0).toFixed(1)}`);
  }
  const touched = new Set<string>(brought.touched);
  for (const piece of pair.native.pieces) {
    const to = pair.pieces.get(piece.id)!;
    const nowA = own.garment.pieces.find((p) => p.id === piece.id);
    const nowB = brought.garment.pieces.find((p) => p.id === to.id);
    if (!nowA || !nowB) {
      if (Boolean(nowA) !== Boolean(nowB)) apart(Infinity, `${piece.name}: parted on one side only`);
      continue;
    }
    if ((own.touched as readonly string[]).includes(piece.id) !== touched.has(to.id))
      apart(Infinity, `${piece.name}: ${touched.has(to.id) ? 'touched' : 'not touched'}`);
    const before = drawn(pair.brought, to.id);
    const long = roundOf(nowA);
    const round = [long - roundOf(piece), roundOf(nowB) - roundOf(before)] as const;
    if (Math.abs(round[0] - round[1]) > 2 * EQUAL_MM)
      apart(round[0] - round[1], `${piece.name}: outline ${round[0].toFixed(1)} and ${round[1].toFixed(1)}`);
    const area = (areaOf(nowB) - areaOf(before) - (areaOf(nowA) - areaOf(piece))) / long;
    if (Math.abs(area) > EQUAL_MM) apart(area, `${piece.name}: area off by ${area.toFixed(1)} mm all round`);
    for (const edge of piece.edges) {
      const mine = nowA.edges.find((e) => e.id === edge.id);
      const others = [...to.under].filter(([, id]) => id === edge.id).map(([id]) => id);
      const both = others.map((id) => nowB.edges.find((e) => e.id === id));
      // An edge that was read as part of its neighbour is compared with it by the outline.
      if (!mine || others.length === 0 || both.some((e) => !e)) continue;
      const was = others.reduce((s, id) => s + pathLength(before.edges.find((e) => e.id === id)!.path), 0);
      if (Math.abs(was - pathLength(edge.path)) > EQUAL_MM + pair.off) continue;
      const grown = [
        pathLength(mine.path) - pathLength(edge.path),
        both.reduce((s, e) => s + pathLength(e!.path), 0) - was,
      ] as const;
      if (Math.abs(grown[0] - grown[1]) > EQUAL_MM)
        apart(
          grown[0] - grown[1],
          `${piece.name}, ${edge.name}: ${grown[0].toFixed(1)} and ${grown[1].toFixed(1)}`,
        );
    }
  }
  for (const seam of pair.native.seams) {
    const now = own.garment.seams.find((s) => s.id === seam.id);
    const mine = now && extra(own.garment, now);
    const was = extra(pair.native, seam);
    const want = new Set([broughtKey(pair, seam.a), broughtKey(pair, seam.b)]);
    if (mine === undefined || was === undefined || want.has('')) continue;
    const twin = pair.brought.seams.find((s) => [s.a, s.b].every((refs) => want.has(keyOf(refs))));
    if (!twin) continue;
    const after = brought.garment.seams.find((s) => s.id === twin.id);
    const theirs = after && extra(brought.garment, after);
    const their = extra(pair.brought, twin);
    if (theirs === undefined || their === undefined) {
      apart(Infinity, `seam ${seam.name}: cannot be walked`);
      continue;
    }
    const turned = broughtKey(pair, seam.a) !== keyOf(twin.a);
    const [a, b] = [mine - was, (turned ? -1 : 1) * (theirs - their)];
    if (Math.abs(a - b) > EQUAL_MM) apart(a - b, `seam ${seam.name}: ${a.toFixed(1)} and ${b.toFixed(1)}`);
  }
  return out;
}

const errorOf = (outcome: StepOutcome): string | undefined =>
  outcome.findings.find((f) => f.severity === 'error')?.code;

export interface Count {
  cases: number;
  equal: number;
  /** A refusal said, before anything was moved, what must be told first. */
  asked: number;
  /** Other than on the sample, and a finding says what was not reached. */
  told: number;
  /** Other than on the sample, and nothing says so: how far, and where. */
  readonly silent: Difference[];
}

const SAYS_SO = new Set(['not-reached', 'not-measured']);

/** Every alteration of the catalogue that the sample takes, with two amounts, on the sample and on what was brought of it. `off`: how far lengths may have been off as brought, mm. */
export function compare(native: Pattern, pattern: Pattern, off = 0): Count {
  const pair = pairOf(native, pattern, off);
  const count: Count = { cases: 0, equal: 0, asked: 0, told: 0, silent: [] };
  for (const entry of CATALOGUE) {
    for (const which of [0, 1] as const) {
      const step: AlterStep = { id: 's', kind: 'alter', entry: entry.id, params: amounts(entry, which) };
      const own = applyStep(pair.native, step);
      if (errorOf(own)) continue;
      const brought = applyStep(pair.brought, step);
      count.cases++;
      if (errorOf(brought)) {
        count.asked++;
        continue;
      }
      const apart = differences(pair, own, brought);
      if (apart.length === 0) count.equal++;
      else if (brought.findings.some((f) => SAYS_SO.has(f.code))) count.told++;
      else
        count.silent.push({
          mm: Math.max(...apart.map((one) => one.mm)),
          words: `${native.id}, ${entry.id}: ${apart.map((one) => one.words).join('; ')}`,
        });
    }
  }
  return count;
}
