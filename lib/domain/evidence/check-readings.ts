import type { EvidenceProblem } from "./evaluation";
import type { Evidence } from "./schema";

/** Arrays of one length, each channel's times rising, windows that end after they begin. */
export function checkReadings(evidence: Evidence): EvidenceProblem[] {
  const channels = evidence.scans.channels.flatMap((channel, i) => {
    const path = `scans.channels[${i}]`;
    const { seconds, microvolts, polarity } = channel;
    if (seconds.length !== microvolts.length || seconds.length !== polarity.length) {
      return [
        {
          path,
          message: `Channel ${channel.channel} has ${seconds.length} times, ${microvolts.length} readings and ${polarity.length} polarities: each reading needs one of each.`,
        },
      ];
    }
    return timesThatDoNotRise(path, channel.channel, seconds);
  });
  const windows = evidence.windows.flatMap((window, i) =>
    window.toSeconds >= window.fromSeconds
      ? []
      : [
          {
            path: `windows[${i}].toSeconds`,
            message: `The window ends at ${window.toSeconds} s, before it begins at ${window.fromSeconds} s.`,
          },
        ],
  );
  return [...channels, ...windows];
}

/** The first only: one shifted clock would otherwise fill the page. */
function timesThatDoNotRise(path: string, channel: string, seconds: readonly number[]): EvidenceProblem[] {
  for (let i = 1; i < seconds.length; i += 1) {
    const before = seconds[i - 1] as number;
    const now = seconds[i] as number;
    if (now > before) continue;
    const what = now === before ? "stands twice" : `follows ${before} s`;
    return [
      {
        path: `${path}.seconds[${i}]`,
        message: `On channel ${channel} the time ${now} s ${what}: times of a channel must rise.`,
      },
    ];
  }
  return [];
}
