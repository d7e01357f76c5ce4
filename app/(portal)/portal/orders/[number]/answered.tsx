import { Timestamp } from "@/app/_ui/timestamp";
import type { PortalOrder } from "@/lib/views/portal-orders";

/** What we asked, and what was answered. */
export function Answered({ answered }: { readonly answered: PortalOrder["answered"] }) {
  return (
    <ul className="plain-list">
      {answered.map((one) => (
        <li key={one.at + one.question}>
          <p className="lines">
            We asked{one.serial ? ` about ${one.serial}` : ""}: {one.question}
          </p>
          <p className="lines">
            <Timestamp at={one.at} precision="day" />, you, {one.saidByName}:{" "}
            {[one.choice, one.text].filter(Boolean).join(". ")}
          </p>
        </li>
      ))}
    </ul>
  );
}
