import type { EvidenceInput } from "@/lib/domain/evidence/schema";

/**
 * The readings as a meter program would write them: one line a reading, in the order they were taken.
 * Format of `files/readings-csv`, long shape. `from` and `to` in seconds cut a part out (to excluded).
 */
export const readingsFile = (evidence: EvidenceInput, from = 0, to = Number.POSITIVE_INFINITY): string => {
  const startedAt = Date.parse(evidence.scans.startedAt ?? "1970-01-01T00:00:00Z");
  const lines = evidence.scans.channels.flatMap((channel) =>
    channel.seconds.flatMap((seconds, index) =>
      seconds >= from && seconds < to
        ? [{ seconds, text: `${channel.channel},${channel.microvolts[index]}` }]
        : [],
    ),
  );
  lines.sort((a, b) => a.seconds - b.seconds);
  const stamp = (seconds: number): string => new Date(startedAt + Math.round(seconds * 1000)).toISOString();
  return `time,channel,emf_uV\n${lines.map((line) => `${stamp(line.seconds)},${line.text}`).join("\n")}\n`;
};
