import { valueOfText, valueToText } from '../../app/contract/value-text.ts';
import type { StoreHandle } from '../handle.ts';

export type Draft = { readonly key: string; readonly content: unknown; readonly updatedAt: string };

export type DraftsStore = {
  get(key: string): Promise<Draft | null>;
  put(key: string, content: unknown, at: string): Promise<void>;
  remove(key: string): Promise<void>;
  /** Keys of half-filled forms, the last touched first. */
  list(): Promise<{ key: string; updatedAt: string }[]>;
};

const LIST_LIMIT = 100;

function parsed(text: string): unknown {
  try {
    return valueOfText(text);
  } catch {
    // A draft is a convenience: one that can't be read is as good as none.
    return null;
  }
}

/** Half-filled forms, pictures included. They are no records: they may change and vanish, and leave no trace in a ledger. */
export function createDraftsStore(handle: StoreHandle): DraftsStore {
  return {
    async get(key) {
      const row = handle.read.get<{ content: string; updated_at: string }>('SELECT content, updated_at FROM draft WHERE key = ?', [key]);
      return row ? { key, content: parsed(row.content), updatedAt: row.updated_at } : null;
    },
    put: (key, content, at) => handle.transact((tx) => {
      tx.run('INSERT INTO draft (key, content, updated_at) VALUES (?, ?, ?) ON CONFLICT (key) DO UPDATE SET content = excluded.content, updated_at = excluded.updated_at',
        [key, valueToText(content ?? null), at]);
    }),
    remove: (key) => handle.transact((tx) => { tx.run('DELETE FROM draft WHERE key = ?', [key]); }),
    async list() {
      return handle.read.all<{ key: string; updatedAt: string }>(`SELECT key, updated_at AS updatedAt FROM draft ORDER BY updated_at DESC LIMIT ${LIST_LIMIT}`);
    },
  };
}
