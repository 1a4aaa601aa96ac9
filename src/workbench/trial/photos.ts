import { pageError, tellTrouble } from '../words/fault.ts';
import { pageTell } from '../station/page-tell.ts';
import type { DocKey } from '../store/kinds.ts';
import { sayHere } from '../station/say-here.ts';
import { shelf } from '../store/use-store.ts';

/** Longest side a photograph is kept at, px: enough to see a fold, small enough for many. */
const LONGEST = 1600;

/** Keeps a photograph in this browser's storage beside the fitting; gives its id, or null with the reason said. It is sent nowhere and erased with the fitting. */
export async function keepPhoto(key: DocKey, file: File): Promise<string | null> {
  try {
    const picture = await createImageBitmap(file).catch(() => {
      throw pageError('photo-unreadable');
    });
    const by = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
    const canvas = new OffscreenCanvas(Math.round(picture.width * by), Math.round(picture.height * by));
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    // Drawn anew, so that place and time written into the file by the camera are not kept.
    const bytes = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
    const id = crypto.randomUUID();
    await (await shelf).putPhoto({ id, key, bytes });
    return id;
  } catch (error) {
    sayHere(`“${file.name}” was not attached. ${tellTrouble(error, pageTell())}`, 'trouble');
    return null;
  }
}

/** An address for showing a kept photograph, or null when it is gone. */
export async function photoUrl(id: string): Promise<string | null> {
  const found = await (await shelf).photo(id);
  return found ? URL.createObjectURL(found.bytes) : null;
}

/** Takes photographs away for good: out of this browser's storage as well, whatever is undone afterwards. */
export async function dropPhotos(ids: readonly string[]): Promise<void> {
  const kept = await shelf;
  await Promise.all(ids.map((id) => kept.dropPhoto(id)));
}
