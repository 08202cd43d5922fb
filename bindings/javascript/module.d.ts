
/** A number in SI units, or a text with its unit, such as "5 ft 3 1/2 in". */
export type Quantity = number | string;

/** A refusal of the library's: every function throws one, and TypeError for a value of another type. */
export declare class TunnelsideError extends Error {
  readonly status: Status;
  readonly relation: Relation | null;
  /** The path of the field, such as "curtain.hip". */
  readonly field: string | null;
  /** The field that it contradicts, or the names that would do. */
  readonly other: string | null;
  readonly unit: string | null;
  readonly reason: string | null;
  /** Which character, element or row; else -1. */
  readonly index: number;
  readonly value: number | null;
  readonly bound: number | null;
  readonly gap: number;
  readonly remedy: number | null;
  /** What was answered all the same, where nothing is within reach. */
  readonly answers?: Readonly<Record<string, unknown>>;
  /** The same, its field named from outside of what holds it. */
  within(path: string): TunnelsideError;
}

/** One row of a structure's table. */
export interface Field {
  readonly name: string;
  readonly type: "number" | "count" | "choice" | "group" | "list";
  readonly unit: string;
  readonly meaning: string;
  readonly low: number;
  readonly high: number;
  readonly lowOpen: boolean;
  readonly highOpen: boolean;
  readonly required: boolean;
  readonly optional: boolean;
  readonly usual: number;
  readonly usualLow: number;
  readonly usualHigh: number;
  readonly basis: string;
  readonly tolerance: number;
  readonly film: boolean;
  readonly choices: readonly string[];
  /** The structure of a group or of a list's elements. */
  readonly kind: string | null;
  readonly capacity: number;
  readonly appliesTo: string | null;
  /** Which of that choice's names, by number. */
  readonly appliesWhile: readonly number[];
}

export interface Trade {
  readonly family: string;
  readonly name: string;
  readonly value: number;
}

/** One side as a file asks for it. */
export interface Site {
  readonly side: Side;
  readonly fittings: Fittings;
  readonly name: string;
  readonly note: string;
  readonly drive_at: string;
  readonly mark: string;
  readonly tolerances: Readonly<Record<string, number>>;
  readonly job: string;
  readonly job_note: string;
  /** Of its drive and its keep-outs, by path. */
  readonly names: Readonly<Record<string, string>>;
  readonly notes: Readonly<Record<string, string>>;
}

/** A value for each row: a number in SI units, a text with its unit, a choice's name, or null where the base's stays. */
export type Column = ArrayLike<Quantity | null>;

/**
 * Of each row its status and the figures that were asked for, by path: NaN where a row has none, and in a bad row. With "findings" among the outputs, the
 * names of what was found.
 */
export interface PlannedSides {
  readonly status: readonly Status[];
  readonly findings?: readonly (readonly FindingCode[])[];
  readonly [path: string]: Float64Array | readonly Status[] | readonly (readonly FindingCode[])[] | undefined;
}

interface Files {
  /**
   * Reads a file of sides, as the programs do: a side, a job of one or two sides that share what stands beside them, or a list of sides.
   * @param text JSON, with the keys that `tunnelside-plan --fields` lists.
   */
  readSides(text: string): readonly Site[];
}

/**
 * Loads the library.
 * @param source The bytes of tunnelside.wasm, a compiled module, or where it is; without it the file beside this module.
 */
export declare function load(source?: string | URL | BufferSource | WebAssembly.Module): Promise<Tunnelside>;
