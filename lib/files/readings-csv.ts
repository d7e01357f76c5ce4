import { readingsLimitBytes } from "@/lib/domain/run/readings-limit";
import { csvDelimiter, csvFields, csvLines, isTooLong } from "./csv-lines";
import { csvText } from "./csv-text";
import { findGaps, type Gap } from "./readings-gaps";
import { readHeader } from "./readings-header";
import type { ReadingsProblem } from "./readings-problem";
import { ReadingsReader } from "./readings-reader";

/** Readings of one channel, in the order of their times. */
export type FileChannel = {
  readonly channel: string;
  /** Seconds, or microseconds since 1970 where the file gives moments: see `clock`. */
  readonly times: Float64Array;
  readonly microvolts: Float64Array;
  readonly polarity: Int8Array;
};

export type ReadingsFile = {
  readonly clock: "seconds" | "microseconds-since-1970";
  readonly channels: readonly FileChannel[];
  readonly readingCount: number;
  /** What a person should know, though the file was read. */
  readonly findings: readonly string[];
};

export type ReadingsOutcome =
  | { readonly ok: true; readonly file: ReadingsFile }
  | { readonly ok: false; readonly problem: ReadingsProblem };

const no = (line: number | null, column: string | null, message: string): ReadingsOutcome => ({
  ok: false,
  problem: { line, column, message },
});

const formatGap = (channel: string, gap: Gap, clock: ReadingsFile["clock"]): string => {
  const scale = clock === "seconds" ? 1 : 1e6;
  const at =
    clock === "seconds" ? `at ${gap.from} s` : `at ${new Date(Math.floor(gap.from / 1000)).toISOString()}`;
  return `Channel ${channel} has a gap of ${((gap.to - gap.from) / scale).toFixed(1)} s ${at}; its usual interval is ${(gap.usual / scale).toFixed(1)} s.`;
};

/** Above 1 V no thermocouple speaks: it is the instrument's mark of an open circuit. */
const overloadMicrovolt = 1e6;

const findingsOf = (
  channels: readonly FileChannel[],
  clock: ReadingsFile["clock"],
  load: readonly string[],
): string[] => {
  const findings: string[] = [];
  for (const { channel, times, microvolts } of channels) {
    for (const gap of findGaps(times).slice(0, 5)) findings.push(formatGap(channel, gap, clock));
    const overloads = microvolts.filter((value) => Math.abs(value) >= overloadMicrovolt).length;
    if (overloads > 0)
      findings.push(
        `Channel ${channel} shows ${overloads} readings of 1 V or more, the mark of an open circuit. They are kept as they came; say the sensor's state at these setpoints.`,
      );
  }
  const absent = load.filter((name) => !channels.some(({ channel }) => channel === name));
  if (absent.length > 0) findings.push(`The file has no reading of channel ${absent.join(", ")}.`);
  return findings;
};

/**
 * Reads a readings file: bytes in, typed rows or a refusal with line, column and remedy out. The format is described
 * where a file is uploaded. Nothing is guessed silently.
 */
export const readReadingsCsv = (bytes: Uint8Array, load: readonly string[]): ReadingsOutcome => {
  if (bytes.length > readingsLimitBytes)
    return no(null, null, "The file is larger than 64 MB. Split it by time and upload the parts in order.");
  const decoded = csvText(bytes);
  if (!decoded.ok) return no(1, null, decoded.message);
  const lines = csvLines(decoded.text);
  const first = lines.next();
  if (first.done)
    return no(1, null, "The file is empty. Upload the file the scanner wrote, with its header line.");
  if (isTooLong(first.value))
    return no(
      first.value.number,
      null,
      "The line is over 100 000 characters long: this is not a table of readings.",
    );
  const delimiter = csvDelimiter(first.value.text);
  const names = csvFields(first.value.text, delimiter);
  if (!names) return no(first.value.number, null, "A quotation mark is left open. Close it or remove it.");
  const header = readHeader(names, first.value.number, load);
  if (!header.ok) return header;
  const reader = new ReadingsReader(header.header, delimiter, load);
  for (const line of lines) {
    const problem = isTooLong(line)
      ? { line: line.number, column: null, message: "The line is over 100 000 characters long." }
      : reader.take(line);
    if (problem) return { ok: false, problem };
  }
  const problem = reader.finish();
  if (problem) return { ok: false, problem };
  const clock = header.header.time.kind === "seconds" ? "seconds" : "microseconds-since-1970";
  const channels = reader.channels();
  return {
    ok: true,
    file: {
      clock,
      channels,
      readingCount: channels.reduce((sum, { times }) => sum + times.length, 0),
      findings: findingsOf(channels, clock, load),
    },
  };
};
