import type { PortalOrder } from "@/lib/views/portal-orders";

/** What was ordered, line by line, and where nothing can be stated of it. */
export function OrderedLines({ lines }: { readonly lines: PortalOrder["lines"] }) {
  return (
    <ul className="plain-list">
      {lines.map((line) => (
        <li key={line.position}>
          {line.quantity} × type {line.typeLetter}, {line.construction}, at {line.setpoints}
          {line.tolerance ? `, judged by: ${line.tolerance}` : ", no statement of conformity"}.
          {line.nothingStated ? ` ${line.nothingStated}` : ""}
        </li>
      ))}
    </ul>
  );
}
