import type { z } from 'zod';
import { batchContract } from './batch.ts';
import { bundlesContract } from './bundles.ts';
import { casebookContract } from './casebook.ts';
import { casesContract } from './cases.ts';
import { custodyContract } from './custody.ts';
import { checkpointsContract } from './checkpoints.ts';
import type { Reply } from './failure.ts';
import { figuresContract } from './figures.ts';
import { historyContract } from './history.ts';
import { keysContract } from './keys.ts';
import { imagesContract } from './images.ts';
import { lotsContract } from './lots.ts';
import { peopleContract } from './people.ts';
import { piecesContract } from './pieces.ts';
import { reportCheckContract } from './report-check.ts';
import { reportDraftsContract } from './report-drafts.ts';
import { reportHouseContract } from './report-house.ts';
import { uploadsContract } from './uploads.ts';
import { workContract } from './work.ts';

/** Every call between window and main: name, input, output, role. Implemented once in main/services, carried by two hosts. */
export const contract = {
  ...casebookContract, ...casesContract, ...custodyContract, ...workContract, ...reportDraftsContract, ...reportHouseContract, ...batchContract, ...imagesContract, ...lotsContract, ...piecesContract, ...keysContract, ...peopleContract,
  ...reportCheckContract, ...checkpointsContract, ...historyContract, ...figuresContract, ...bundlesContract, ...uploadsContract,
} as const;

export type Contract = typeof contract;
export type OperationName = keyof Contract;
export type Input<K extends OperationName> = z.input<Contract[K]['input']>;
export type ParsedInput<K extends OperationName> = z.output<Contract[K]['input']>;
export type Output<K extends OperationName> = z.output<Contract[K]['output']>;

/** The one door, as the window sees it. */
export type Door = {
  call<K extends OperationName>(name: K, input: Input<K>): Promise<Reply<Output<K>>>;
  subscribe(listener: (event: DoorEvent) => void): () => void;
};

/** What main tells the window unasked. */
export type DoorEvent =
  | { readonly kind: 'progress'; readonly task: string; readonly done: number; readonly total: number; readonly note: string }
  | { readonly kind: 'changed'; readonly operation: OperationName }
  | { readonly kind: 'menu'; readonly command: string };
