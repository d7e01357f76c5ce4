import { type CsvLine, csvFields } from "./csv-lines";
import { decimal } from "./decimal";
import { instant } from "./instant";
import { type ReadingsHeader, unknownChannel } from "./readings-header";
import type { ReadingsProblem } from "./readings-problem";

type Growing = { readonly times: number[]; readonly microvolts: number[]; readonly polarity: number[] };
type Read =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly problem: ReadingsProblem };

const polarities: Readonly<Record<string, 1 | -1>> = {
  "+": 1,
  "+1": 1,
  "1": 1,
  "-": -1,
  "-1": -1,
  "−": -1,
  "−1": -1,
};

/** Takes the lines of one file one by one; the first problem ends the file. */
export class ReadingsReader {
  readonly #header: ReadingsHeader;
  readonly #delimiter: string;
  readonly #load: readonly string[];
  readonly #channels = new Map<string, Growing>();
  /** The first number written with each decimal mark: both in one file cannot be told apart from grouping. */
  #mark: { readonly mark: "." | ","; readonly line: number } | null = null;
  /** The first "10,503", which could be ten thousand, until another number shows that the comma is the decimal mark. */
  #doubt: ReadingsProblem | null = null;
  #commaIsDecimal = false;

  constructor(header: ReadingsHeader, delimiter: string, load: readonly string[]) {
    this.#header = header;
    this.#delimiter = delimiter;
    this.#load = load;
    // Ten thousand millivolt is no emf, so in mV and V the comma can only be the decimal mark.
    const shape = header.shape;
    const shifts = shape.kind === "long" ? [shape.emf.shift] : shape.cells.map((cell) => cell.shift);
    this.#commaIsDecimal = shifts.some((shift) => shift > 0);
  }

  take(line: CsvLine): ReadingsProblem | null {
    const fields = csvFields(line.text, this.#delimiter);
    if (!fields)
      return {
        line: line.number,
        column: null,
        message: "A quotation mark is left open. Close it or remove it.",
      };
    if (fields.length !== this.#header.width) return this.#wrongWidth(line, fields.length);
    const time = this.#time(line, fields[this.#header.time.index] ?? "");
    if (!time.ok) return time.problem;
    const polarity = this.#polarity(line, fields);
    if (!polarity.ok) return polarity.problem;
    const shape = this.#header.shape;
    if (shape.kind === "long") {
      const channel = (fields[shape.channel.index] ?? "").trim();
      if (!this.#load.includes(channel))
        return {
          line: line.number,
          column: shape.channel.name,
          message: unknownChannel(channel, this.#load),
        };
      return this.#reading(line, channel, shape.emf, fields, time.value, polarity.value);
    }
    for (const cell of shape.cells) {
      const problem = this.#reading(line, cell.channel, cell, fields, time.value, polarity.value);
      if (problem) return problem;
    }
    return null;
  }

  finish(): ReadingsProblem | null {
    if (this.#channels.size === 0)
      return {
        line: null,
        column: null,
        message:
          "The file has a header line but no readings. Upload the file after the scanner has written to it.",
      };
    return this.#commaIsDecimal ? null : this.#doubt;
  }

  channels() {
    return [...this.#channels].map(([channel, growing]) => ({
      channel,
      times: Float64Array.from(growing.times),
      microvolts: Float64Array.from(growing.microvolts),
      polarity: Int8Array.from(growing.polarity),
    }));
  }

  #wrongWidth(line: CsvLine, found: number): ReadingsProblem {
    const wanted = this.#header.width;
    const comma =
      this.#delimiter === "," && found > wanted
        ? " If the comma is the decimal mark, separate the columns by semicolons."
        : " The line may have been cut off: export the file again.";
    return {
      line: line.number,
      column: null,
      message: `There are ${found} fields where the header has ${wanted}.${comma}`,
    };
  }

  #time(line: CsvLine, written: string): Read {
    const { name, kind } = this.#header.time;
    if (kind === "seconds") return this.#number(line, name, written, 0);
    const read = instant(written);
    if (read.kind === "instant") return { ok: true, value: read.microseconds };
    const remedy = {
      "no-zone": `"${written}" does not say its time zone. Write it with Z or an offset, e.g. 2026-03-02T09:30:00+01:00.`,
      "too-fine": `"${written}" is finer than a microsecond. Write at most six digits after the second.`,
      "not-an-instant": `"${written}" is not a time. Write it like 2026-03-02T09:30:00+01:00, or use time_s with seconds.`,
    } as const;
    return { ok: false, problem: { line: line.number, column: name, message: remedy[read.kind] } };
  }

  #polarity(line: CsvLine, fields: readonly string[]): Read {
    const column = this.#header.polarity;
    if (!column) return { ok: true, value: 1 };
    const written = (fields[column.index] ?? "").trim();
    const value = Object.hasOwn(polarities, written) ? polarities[written] : undefined;
    if (value !== undefined) return { ok: true, value };
    return {
      ok: false,
      problem: {
        line: line.number,
        column: column.name,
        message: `"${written}" is not a polarity. Write + for forward or - for leads reversed.`,
      },
    };
  }

  #number(line: CsvLine, column: string, written: string, shift: number): Read {
    const read = decimal(written, shift);
    const no = (message: string): Read => ({ ok: false, problem: { line: line.number, column, message } });
    if (read.kind === "empty")
      return no(
        "The field is empty. A reading that was not taken has no line (or its own file); write no blank for it.",
      );
    if (read.kind === "both-marks")
      return no(`"${written}" has both a comma and a point. Write numbers without thousands separators.`);
    if (read.kind === "out-of-range") return no(`"${written}" is too large to be a number of this kind.`);
    if (read.kind === "not-a-number")
      return no(
        `"${written}" is not a number. Correct it from the instrument's record, or remove this line.`,
      );
    if (read.mark) {
      this.#mark ??= { mark: read.mark, line: line.number };
      if (this.#mark.mark !== read.mark)
        return no(
          `"${written}" uses a decimal ${read.mark === "," ? "comma" : "point"}, line ${this.#mark.line} a decimal ${read.mark === "," ? "point" : "comma"}. Use one mark throughout, and no thousands separators.`,
        );
    }
    if (read.mark === "," && !read.grouped) this.#commaIsDecimal = true;
    if (read.grouped)
      this.#doubt ??= {
        line: line.number,
        column,
        message: `"${written}" could be ${written.trim().replace(",", ".")} or ${written.trim().replace(",", "")}, and no other number in the file decides it. Write numbers with a decimal point, or without thousands separators.`,
      };
    return { ok: true, value: read.value };
  }

  #reading(
    line: CsvLine,
    channel: string,
    cell: { readonly index: number; readonly name: string; readonly shift: number },
    fields: readonly string[],
    time: number,
    polarity: number,
  ): ReadingsProblem | null {
    const value = this.#number(line, cell.name, fields[cell.index] ?? "", cell.shift);
    if (!value.ok) return value.problem;
    const growing = this.#channels.get(channel) ?? { times: [], microvolts: [], polarity: [] };
    const before = growing.times.at(-1);
    if (before !== undefined && time <= before)
      return {
        line: line.number,
        column: this.#header.time.name,
        message: `The time of channel ${channel} ${time === before ? "repeats" : "goes back"}. Each reading of a channel must be later than the one before: sort the file, and check that the clock was not set during the run.`,
      };
    growing.times.push(time);
    growing.microvolts.push(value.value);
    growing.polarity.push(polarity);
    this.#channels.set(channel, growing);
    return null;
  }
}
