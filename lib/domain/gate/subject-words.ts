const kinds: Readonly<Record<string, readonly [one: string, many: string]>> = {
  "channel-zero": ["channel", "channels"],
  "channel-in-another-run": ["channel", "channels"],
  "tips-warmed": ["place", "places"],
  "wiring-in-doubt": ["place", "places"],
};

/** "T-000001, T-000002", or "channels 101, 102": tags speak for themselves, numbers do not. Empty for the whole run. */
export const subjectWords = (code: string, subjects: readonly string[]): string => {
  const named = subjects.join(", ");
  const kind = kinds[code];
  return kind === undefined || subjects.length === 0
    ? named
    : `${kind[subjects.length > 1 ? 1 : 0]} ${named}`;
};

/** The subjects before what is said of them: "Channels 101, 102: this channel was not shorted." */
export const saidOf = (code: string, subjects: readonly string[], reason: string): string => {
  const words = subjectWords(code, subjects);
  const sentence = words === "" ? reason : `${words}: ${reason}`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
};
