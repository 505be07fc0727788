import type { DoorEvent, OperationName, Output, ParsedInput } from '../../app/contract/index.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Result } from '../../app/result.ts';

/** Who sits at one window. A host keeps one session per window and hands it to every call. */
export type Session = {
  personId: string | null;
  /** Answers nothing until a password is given. */
  locked?: boolean;
  /** When somebody was last at work here, ms since 1970. */
  activeAt?: number;
};

/** What one call is given beside its input. */
export type Call = {
  readonly session: Session;
  readonly signal: AbortSignal;
  emit(event: DoorEvent): void;
};

/** Services answer with values; a thrown error is a fault and becomes 'internal' at the door. */
export type Service<K extends OperationName> = (input: ParsedInput<K>, call: Call) => Promise<Result<Output<K>, Failure>>;

export type Services = { readonly [K in OperationName]: Service<K> };

/** Clock and randomness, handed in. */
export type Deps = { now(): Date; newId(): string };
