import { Notice } from "@/app/_ui/notice";

/** The order is not finished while the customer sends another sensor for one that goes back unmeasured. */
export function AwaitedSensors({ awaited }: { readonly awaited: number }) {
  if (awaited === 0) return null;
  return (
    <Notice
      kind="info"
      title={awaited === 1 ? "Another sensor is awaited" : `${awaited} other sensors are awaited`}
    >
      The customer sends {awaited === 1 ? "it" : "them"} in the place of what goes back unmeasured. Take{" "}
      {awaited === 1 ? "it" : "them"} in on the same line. Where nothing comes after all, change the order to
      fewer sensors.
    </Notice>
  );
}
