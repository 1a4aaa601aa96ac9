import { useEffect } from 'react';
import type { Held } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';

/** Back and forward through everything done to this document, and what the last act was. Ctrl+Z and Ctrl+Shift+Z do the same. */
export function UndoRow({ held }: { held: Held }) {
  const { key } = held;
  useEffect(() => {
    const hear = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
      const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if (typing) return;
      event.preventDefault();
      void store.move(key, (at) => at + (event.shiftKey ? 1 : -1));
    };
    addEventListener('keydown', hear);
    return () => removeEventListener('keydown', hear);
  }, [key]);
  return (
    <div className="row undo">
      <span className="small said-last" role="status">
        {held.at > 0 ? held.say : ''}
      </span>
      <button
        type="button"
        className="act"
        disabled={held.at === 0}
        onClick={() => void store.move(key, (at) => at - 1)}
      >
        Undo
      </button>
      <button
        type="button"
        className="act"
        disabled={held.at === held.last}
        onClick={() => void store.move(key, (at) => at + 1)}
      >
        Redo
      </button>
    </div>
  );
}
