import type { Past, PastPhoto, PastState, PastVersion } from '../../garment/index.ts';
import type { Keeper } from './keeper.ts';
import { kindOf, type AnyDoc, type DocKey } from './kinds.ts';
import { readKept } from './read-kept.ts';
import type { Head } from './shelf.ts';

/** Bytes turned into text at a time: more arguments than this a function does not take everywhere. */
const AT_ONCE = 0x8000;

async function base64(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (let i = 0; i < bytes.length; i += AT_ONCE)
    text += String.fromCharCode(...bytes.subarray(i, i + AT_ONCE));
  return btoa(text);
}
const jpegBlob = (jpeg: string): Blob =>
  new Blob([Uint8Array.from(atob(jpeg), (c) => c.charCodeAt(0))], { type: 'image/jpeg' });

/** What is kept of a document, and how much of it this page cannot read and so cannot give. */
export interface TakenPast {
  readonly past: Past<AnyDoc>;
  readonly unread: number;
}

/** The document as this page reads it, or null. */
function readable(key: DocKey, doc: AnyDoc | undefined): AnyDoc | null {
  try {
    return doc === undefined ? null : readKept(kindOf(key), doc);
  } catch {
    return null;
  }
}

/** Everything the keeper has of a document: each state with its sentence, the versions, the photographs. */
export async function takePast(keeper: Keeper, key: DocKey): Promise<TakenPast> {
  const head = (await keeper.heads()).find((h) => h.key === key);
  const states: PastState<AnyDoc>[] = [];
  let [at, unread] = [0, 0];
  for (const { n, say, on } of await keeper.sentences(key)) {
    const doc = readable(key, (await keeper.entry(key, n).catch(() => undefined))?.doc);
    if (!doc) unread += 1;
    else if (states.push({ doc, say, on }) && n <= (head?.at ?? 0)) at = states.length - 1;
  }
  const versions: PastVersion<AnyDoc>[] = [];
  for (const { doc: found, name, on } of await keeper.versions(key)) {
    const doc = readable(key, found);
    if (doc) versions.push({ doc, name, on });
    else unread += 1;
  }
  const photos: PastPhoto[] = [];
  for (const { id, bytes } of await keeper.photos(key)) photos.push({ id, jpeg: await base64(bytes) });
  return { past: { at, states, versions, photos }, unread };
}

/** Keeps the versions and photographs of a past beside its document; those that are here already stay as they are. */
export async function putAside(keeper: Keeper, key: DocKey, past: Past<AnyDoc>): Promise<void> {
  const here = await keeper.versions(key);
  for (const version of past.versions) {
    if (here.some((v) => v.name === version.name && v.on === version.on)) continue;
    await keeper.saveVersion({ ...version, key, id: crypto.randomUUID() });
  }
  for (const { id, jpeg } of past.photos) await keeper.putPhoto({ id, key, bytes: jpegBlob(jpeg) });
}

/** Keeps a document that is not here yet with its whole past: done whole or, when it rejects, not at all. */
export async function bringPast(keeper: Keeper, key: DocKey, past: Past<AnyDoc>): Promise<Head> {
  const [first, ...later] = past.states; // never none
  try {
    let head = await keeper.create(key, first!.doc, first!);
    for (const { doc, say, on } of later) ({ head } = await keeper.change(key, { act: () => doc, say, on }));
    await putAside(keeper, key, past);
    if (past.at === head.at) return head;
    return (await keeper.move(key, past.at, past.states[past.at]!.on)) ?? head;
  } catch (error) {
    await keeper.erase([key]);
    throw error;
  }
}
