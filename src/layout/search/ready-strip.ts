import { convexParts } from './convex-parts.ts';
import type { DepthField } from './depth-field.ts';
import { depthField, mirroredField, packFields } from './depth-field.ts';
import type { Flat } from './flat.ts';
import type { Parted } from './no-fit.ts';
import { noFit } from './no-fit.ts';
import type { Strip, StripForms, StripJob } from './strip.ts';
import { stripForms } from './strip.ts';

const sameFlat = (a: Flat, b: Flat): boolean => a.length === b.length && a.every((v, i) => v === b[i]);

/** Pairs of forms that share one region: mirrored, both at once, the region is mirrored; turned by half or exchanged, it is point-reflected. */
interface Kin {
  /** First form of the same outline: one that differs only in where it may stand has the same regions. */
  readonly same: readonly number[];
  /** The form turned by half, or −1. */
  readonly half: readonly number[];
  /** The form's mirror image (x → −x), or −1. */
  readonly mirror: readonly number[];
}

function kinOf(forms: StripForms['forms']): Kin {
  // Copies of a piece come as several shapes, left and right, pinned and free, with outlines all the same.
  const find = (mirrored: boolean, angle: number, like: number): number =>
    forms.findIndex(
      (g) => g.mirrored === mirrored && g.angle === angle && sameFlat(g.drawn, forms[like]!.drawn),
    );
  return {
    same: forms.map((f, k) => find(f.mirrored, f.angle, k)),
    half: forms.map((f, k) => find(f.mirrored, (f.angle + 180) % 360, k)),
    mirror: forms.map((f, k) => find(!f.mirrored, (360 - f.angle) % 360, k)),
  };
}

/** Makes a job ready to search, one region at a time, so that a caller may show or do something else in between. */
export function* readyStepwise(given: StripForms): Generator<void, Strip, void> {
  const { forms } = given;
  const F = forms.length;
  const { same, half, mirror } = kinOf(forms);
  const fixed = forms.map((f) => given.pinned[given.itemShape.indexOf(f.shape)] !== null);
  const parted = new Map<number, Parted>();
  const partsOf = (f: number): Parted => {
    const known = parted.get(f);
    if (known) return known;
    const { outline } = forms[f]!;
    const made = { outline, parts: convexParts(outline) };
    parted.set(f, made);
    return made;
  };
  const moves = forms.map((_, k) => same.some((s, f) => s === k && !fixed[f]));
  const pairField = new Int32Array(F * F).fill(-1);
  const pairSign = new Int8Array(F * F).fill(1);
  const fields: DepthField[] = [];
  const set = (u: number, v: number, k: number, sign: number): void => {
    if (u < 0 || v < 0 || pairField[u * F + v]! >= 0) return;
    pairField[u * F + v] = k;
    pairSign[u * F + v] = sign;
  };
  const share = (a: number, b: number, k: number): void => {
    set(a, b, k, 1);
    set(b, a, k, -1);
    set(half[a]!, half[b]!, k, -1);
    set(half[b]!, half[a]!, k, 1);
  };
  for (let a = 0; a < F; a++) {
    for (let b = 0; b < F; b++) {
      if (same[a] !== a || same[b] !== b || pairField[a * F + b]! >= 0 || !(moves[a] || moves[b])) continue;
      const field = depthField(noFit(partsOf(a), partsOf(b)));
      share(a, b, fields.push(field) - 1);
      const ma = mirror[a]!;
      const mb = mirror[b]!;
      if (ma >= 0 && mb >= 0 && pairField[ma * F + mb]! < 0)
        share(ma, mb, fields.push(mirroredField(field)) - 1);
      yield;
    }
  }
  // Read from the regions as made: the first of its outline may itself be pinned.
  const fieldOf = new Int32Array(F * F);
  const signOf = new Int8Array(F * F);
  for (let a = 0; a < F; a++) {
    for (let b = 0; b < F; b++) {
      const made = same[a]! * F + same[b]!;
      // What is pinned is not held against what is pinned: a person may lay pieces closer than the gap.
      fieldOf[a * F + b] = fixed[a] && fixed[b] ? -1 : pairField[made]!;
      signOf[a * F + b] = pairSign[made]!;
    }
  }
  return { ...given, pairField: fieldOf, pairSign: signOf, fields: packFields(fields) };
}

/** Makes a job ready to search: all pairs' no-fit regions, computed once (reflections shared). */
export function readyStrip(job: StripJob): Strip {
  const steps = readyStepwise(stripForms(job));
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
