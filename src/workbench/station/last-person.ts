/** Whose sheet was open last: the next fitting is most likely for them. Kept for this tab only; it is no part of anybody's data. */
const KEY = 'last-person';

export const rememberPerson = (id: string): void => sessionStorage.setItem(KEY, id);

export const lastPerson = (): string | null => sessionStorage.getItem(KEY);
