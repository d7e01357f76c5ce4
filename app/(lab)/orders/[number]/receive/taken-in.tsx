import Link from "next/link";
import { Notice } from "@/app/_ui/notice";

type Props = { readonly number: string; readonly taken?: string; readonly deviating?: string };

const count = (text: string | undefined): number => (text && /^\d{1,3}$/.test(text) ? Number(text) : 0);

/** What the last paste did, above the form for the next. */
export function TakenIn({ number, taken, deviating }: Props) {
  const sensors = count(taken);
  const outside = count(deviating);
  if (sensors === 0) return null;
  return (
    <Notice
      kind={outside > 0 ? "caution" : "info"}
      title={`${sensors} ${sensors === 1 ? "sensor is" : "sensors are"} taken in${
        outside > 0 ? `; ${outside} not as described or outside the limits` : ""
      }`}
    >
      {outside > 0 ? (
        <>
          On hold: <Link href={`/orders/${number}#holds`}>ask the customer from the order</Link>.
        </>
      ) : (
        <>
          <Link href={`/orders/${number}#sensors`}>See them on the order</Link>, or take in the next ones
          below.
        </>
      )}
    </Notice>
  );
}
