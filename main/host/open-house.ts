import type { DoorEvent } from '../../app/contract/index.ts';
import type { House } from './dispatch.ts';
import type { Log } from './log.ts';

export type HouseOptions = {
  readonly dataFolder: string;
  /** A casebook file to open instead of the one last used. */
  readonly casebook: string | undefined;
  readonly host: 'electron' | 'loopback';
  /** Why this host is used, for the window to say; empty where there is nothing to say. */
  readonly hostNote: string;
  readonly migrations: string;
  readonly worker: string;
  readonly log: Log;
  announce(event: DoorEvent): void;
};

export type OpenHouse = {
  readonly house: House;
  /** Set where another program holds the casebook: who starts a second host should leave, not show an unusable window. */
  readonly inUse: { readonly message: string; readonly next: string } | null;
  close(): Promise<void>;
};

export async function openHouse(_options: HouseOptions): Promise<OpenHouse> {
  throw new Error('the casebook is not there yet');
}
