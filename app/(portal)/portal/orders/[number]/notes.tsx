import { Timestamp } from "@/app/_ui/timestamp";
import type { PortalOrder } from "@/lib/views/portal-orders";

/** What was said about the order, on either side. */
export function Notes({ notes }: { readonly notes: PortalOrder["notes"] }) {
  return (
    <ul className="plain-list">
      {notes.map((note) => (
        <li key={note.at + note.text}>
          <p>
            <Timestamp at={note.at} precision="day" />, {note.who}:
          </p>
          <p className="lines">{note.text}</p>
        </li>
      ))}
    </ul>
  );
}
