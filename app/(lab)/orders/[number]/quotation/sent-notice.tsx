import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import type { Sent } from "@/lib/views/shipment/sent";

type Props = { readonly order: string; readonly sent: Sent | null };

/** What the parcel that was closed a moment ago took away, above its delivery note. */
export function SentNotice({ order, sent }: Props) {
  if (!sent) return null;
  const { serials, number, how, address, finished } = sent;
  return (
    <Notice
      kind="done"
      title={`Sent back with ${number}: ${serials.length} ${serials.length === 1 ? "sensor" : "sensors"}`}
    >
      {serials.join(", ")}; {how}, to {address}. The customer is told by mail; the delivery note is below.
      {finished > 0 ? (
        <>
          {" "}
          <Link href={`/orders/${order}/ship`}>{finished} more finished, still here</Link>
        </>
      ) : null}
    </Notice>
  );
}
