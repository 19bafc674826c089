/**
 * The one error shape of the project. Every refusal a user can meet is a
 * {@link DrywakeError}: `message` says what was given and what is allowed,
 * `hint` says what to do next, `code` is stable and machine-readable.
 */

/** Families of refusal; `http` maps them to a status and `cli` to an exit code, each in one table. */
export type ErrorKind = 'invalid-input' | 'out-of-range' | 'missing-data' | 'source-failed' | 'conflict';

/** What an error may carry beside its message. */
export interface ErrorDetails {
  /** What the user can do about it, as a sentence. */
  hint?: string;
  /** Figures and names behind the message, JSON-safe. */
  details?: Record<string, unknown>;
  /** The error that led to this one. */
  cause?: unknown;
}

/** Base of all refusals that a user is meant to read. */
export class DrywakeError extends Error {
  readonly hint: string;
  readonly details: Record<string, unknown>;

  constructor(
    readonly kind: ErrorKind,
    readonly code: string,
    message: string,
    { hint = '', details = {}, cause }: ErrorDetails = {},
  ) {
    super(message, cause === undefined ? undefined : { cause });
    this.name = new.target.name;
    this.hint = hint;
    this.details = details;
  }
}

/** The user gave something that cannot be read or does not fit together. */
export class InvalidInputError extends DrywakeError {
  constructor(code: string, message: string, more?: ErrorDetails) {
    super('invalid-input', code, message, more);
  }
}

/** A quantity lies outside the range in which its equation holds. */
export class OutOfRangeError extends DrywakeError {
  constructor(quantity: string, value: number, range: string) {
    super('out-of-range', 'OUT_OF_RANGE', `${quantity} is ${value}; it must be ${range}.`, {
      hint: `Give a value for ${quantity} that is ${range}.`,
      details: { quantity, value, range },
    });
  }
}

/** The data needed for an answer are not there, or not enough of them. */
export class MissingDataError extends DrywakeError {
  constructor(code: string, message: string, more?: ErrorDetails) {
    super('missing-data', code, message, more);
  }
}

/** A file or service could not be read to its end. */
export class SourceFailedError extends DrywakeError {
  constructor(code: string, message: string, more?: ErrorDetails) {
    super('source-failed', code, message, more);
  }
}

/** Somebody else holds what was asked for, or it has changed meanwhile. */
export class ConflictError extends DrywakeError {
  constructor(code: string, message: string, more?: ErrorDetails) {
    super('conflict', code, message, more);
  }
}

/**
 * Throws {@link OutOfRangeError} unless `low <= value <= high`; NaN is refused too.
 * @example assertWithin('soilPh', 7, 3, 11) // undefined
 */
export function assertWithin(quantity: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    const range =
      low === Number.NEGATIVE_INFINITY
        ? `at most ${high}`
        : high === Number.POSITIVE_INFINITY
          ? `at least ${low}`
          : `from ${low} to ${high}`;
    throw new OutOfRangeError(quantity, value, range);
  }
}
