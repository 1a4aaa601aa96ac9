import type { Severity } from '../../garment/index.ts';

const WORDS: Record<Severity, string> = {
  error: 'Cannot be cut',
  warning: 'Stop and look',
  note: 'Worth knowing',
};

/** What a finding's weight is called, in words. */
export const severityWord = (severity: Severity): string => WORDS[severity];

/** Three signs told apart by shape: scissors' cross in a filled square, a half-filled triangle, an open ring. */
export function Sign({ severity }: { severity: Severity }) {
  return (
    <svg className="sign" viewBox="0 0 24 24" role="img" aria-label={WORDS[severity]}>
      {severity === 'error' && (
        <>
          <rect x="2" y="2" width="20" height="20" fill="currentColor" />
          <path d="M7 7l10 10M17 7L7 17" stroke="var(--tissue)" strokeWidth="2.6" />
        </>
      )}
      {severity === 'warning' && (
        <>
          <path d="M12 3 22 21H2Z" fill="none" stroke="currentColor" strokeWidth="2" strokeLinejoin="round" />
          <path d="M12 3V21H2Z" fill="currentColor" />
        </>
      )}
      {severity === 'note' && (
        <>
          <circle cx="12" cy="12" r="9" fill="none" stroke="currentColor" strokeWidth="2" />
          <circle cx="12" cy="12" r="2.2" fill="currentColor" />
        </>
      )}
    </svg>
  );
}
