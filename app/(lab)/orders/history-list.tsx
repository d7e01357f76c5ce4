import { Timestamp } from "@/app/_ui/timestamp";

type Entry = { readonly key: string; readonly at: string; readonly who: string; readonly sentence: string };

/** What the audit log says of a thing, as sentences, the newest first. */
export function HistoryList({ entries }: { readonly entries: readonly Entry[] }) {
  return (
    <ul className="list">
      {entries.map((entry) => (
        <li key={entry.key}>
          <Timestamp at={entry.at} /> {entry.who} {entry.sentence}.
        </li>
      ))}
    </ul>
  );
}
