import { cautionsFor, renderPhrase, tellIn, type Fitting } from '../../garment/index.ts';

/** Where work can hurt, it is said, once and at the top. */
export function Cautions({ fitting }: { fitting: Fitting }) {
  const cautions = cautionsFor(fitting.pattern.cautions);
  if (cautions.length === 0) return null;
  return (
    <section className="said cautions" aria-label="Cautions for this garment">
      <ul>
        {cautions.map(({ id, words }) => (
          <li key={id}>{renderPhrase(words, tellIn(fitting.body.show))}</li>
        ))}
      </ul>
    </section>
  );
}
