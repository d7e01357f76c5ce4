import Link from "next/link";
import type { ReactNode } from "react";
import { Section } from "@/app/_ui/section";
import type { LaterFlag } from "@/lib/domain/trace/later-flags";

type Props = {
  readonly flags: readonly LaterFlag[];
  readonly on: string;
  /** Lets another day be asked about, where the page has no place for it elsewhere. */
  readonly asOf?: ReactNode;
};

/** What was recorded since. Flags only: the chain beside them stays what it was. */
export function LaterSection({ flags, on, asOf }: Props) {
  return (
    <Section title="Since then" note={`As known on ${on}. Does not change the chain.`} actions={asOf} wide>
      {flags.length === 0 ? (
        <p>Nothing was recorded about these standards that would ask for another look.</p>
      ) : (
        <ul className="plain-list">
          {flags.map((flag) => (
            <li key={`${flag.tag} ${flag.text}`}>
              <Link href={`/trace/standard/${flag.tag}?on=${on}`}>{flag.tag}</Link> {flag.text}.
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
