import Link from "next/link";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import type { PrintedDifference } from "@/lib/domain/review/printed-difference";

/** Against the last calibration of the same sensor: what it was, the difference, and whether U explains it. */
export function DifferenceLine({ difference }: { readonly difference: PrintedDifference | null }) {
  if (!difference) return <>first calibration here</>;
  const { certificate, performedTo } = difference;
  return (
    <>
      <Quantity value={difference.celsius} uncertainty={difference.expandedCelsius} unit="°C" />{" "}
      <StateMark
        state={difference.isBeyondU ? "exception" : "done"}
        label={`${difference.ratio} of its U${difference.isBeyondU ? ": beyond" : ""}`}
      />
      <br />
      <span className="quiet">
        then{" "}
        <Quantity
          value={difference.earlierCelsius}
          uncertainty={difference.earlierExpandedCelsius}
          unit="°C"
        />
        , {performedTo}, <Link href={`/certificates/${certificate}`}>{certificate}</Link>
      </span>
    </>
  );
}
