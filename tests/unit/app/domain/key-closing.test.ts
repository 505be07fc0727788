import { describe, expect, test } from 'vitest';
import { BACKEND_WORDS, closingWords, STORE_BACKENDS, type KeyClosing } from '../../../../app/domain/key-closing.ts';

const kept = (change: Partial<KeyClosing> = {}): KeyClosing => ({ offered: 'keychain', why: '', wanted: true, closedBy: 'store', store: 'keychain', opensHere: true, sheet: true, ...change });
const none: Partial<KeyClosing> = { offered: null, why: 'this system offers no key store', closedBy: 'password', store: null };

describe('how the key is kept, in words', () => {
  test.each(STORE_BACKENDS.map((one) => [one]))('names %s', (backend) => {
    const { state, more } = closingWords(kept({ store: backend }));
    expect(state).toContain(`the system’s key store (${BACKEND_WORDS[backend]})`);
    expect(more).toContain('recovery sheet');
  });

  test('by the passwords only says why, and what follows', () => {
    expect(closingWords(kept(none))).toEqual({ state: 'The private part is kept by the passwords only: this system offers no key store.', more: expect.stringContaining('try passwords') as string });
    expect(closingWords(kept({ closedBy: 'password', wanted: false })).state).toContain('a manager decided');
    expect(closingWords(kept({ closedBy: 'password', sheet: false }))).toEqual({ state: expect.stringContaining('no recovery sheet') as string, more: expect.stringContaining('Make a new recovery sheet') as string });
    expect(closingWords(kept({ closedBy: 'password' })).more).toContain('At the next sign-in');
  });

  test('on another machine says so, and what to do, whether or not this one has a store', () => {
    const cases = [[{}, 'of another computer or account'], [{ offered: null, why: 'a window in a browser can’t reach the system’s key store' }, 'which can’t be used here: a window in a browser can’t reach the system’s key store.']] as const;
    for (const [here, said] of cases) {
      for (const closedBy of ['store', 'both'] as const) {
        const { state, more } = closingWords(kept({ ...here, closedBy, opensHere: false }));
        expect(state).toContain(said);
        expect(state).toContain('Passwords do not open it here.');
        expect(more).toContain('open it here with the recovery sheet');
        expect(closingWords(kept({ ...here, closedBy, opensHere: false, sheet: false })).more).toMatch(/^There is no recovery sheet\..*make a new key\.$/);
      }
    }
  });

  test('for some only, and for nobody', () => {
    expect(closingWords(kept({ closedBy: 'both' })).state).toContain('for some');
    expect(closingWords(kept({ closedBy: 'none', store: null })).state).toContain('Nobody');
  });
});
