import { useState } from 'react';
import { openFile } from '../files/open-file.ts';
import { go } from '../station/route.ts';

/** Chooses a file with a pattern and goes where it is looked at. */
export function BringIn({ onOpened }: { onOpened?: () => void }) {
  const [busy, setBusy] = useState(false);
  return (
    <label className="act main filepick">
      {busy ? 'Reading …' : 'Bring in a pattern file'}
      <input
        type="file"
        className="unseen"
        accept=".pdf,.svg,.dxf,.json,.csv"
        disabled={busy}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (!file) return;
          setBusy(true);
          void openFile(file)
            .then((href) => {
              if (!href) return;
              go(href);
              onOpened?.();
            })
            .finally(() => setBusy(false));
        }}
      />
    </label>
  );
}
