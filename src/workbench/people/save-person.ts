import { writePerson, type Body, type Fitting } from '../../garment/index.ts';
import { saveFile } from '../parts/save-file.ts';
import { pageTell } from '../station/page-tell.ts';
import { everythingOf } from '../store/everything.ts';
import { sayHere } from '../station/say-here.ts';
import { store } from '../store/use-store.ts';
import { tellTrouble } from '../words/fault.ts';

/** Saves all that is kept of a person as a file; says what could not go into it. */
export async function savePerson(body: Body, fittings: readonly Fitting[]): Promise<void> {
  try {
    const { person, unread } = await everythingOf(store, body, fittings);
    saveFile(`${body.name} - everything kept.json`, writePerson(person), 'application/json');
    if (unread > 0)
      sayHere(
        `${unread === 1 ? 'One earlier state' : `${unread} earlier states`} of what is kept about ${body.name} cannot be read by this page and ${unread === 1 ? 'is' : 'are'} not in the file.`,
        'trouble',
      );
  } catch (error) {
    sayHere(`Nothing was saved. ${tellTrouble(error, pageTell())}`, 'trouble');
  }
}
