import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import type { OrderPromise } from "@/lib/views/promise/order-promise";

const moment = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 16)}`;

/** As the furnace is set, and in brackets as the customer wrote it. */
const pointText = (celsius: number, typed: string | undefined): string =>
  `${Number(celsius.toFixed(1))}${typed ? ` (${typed})` : ""}`;

/** What the furnaces allow, and what that was reckoned with. */
export function Proposal({ view }: { readonly view: OrderPromise }) {
  const { proposal, policy } = view;
  if (proposal.kind === "impossible")
    return (
      <Notice kind="info" title="No day can be reckoned">
        {proposal.reason}
      </Notice>
    );
  return (
    <div className="stack">
      <p>
        <strong>{proposal.promisedOn}</strong>, from {proposal.furnaceHours} furnace hours
        {proposal.ahead.length > 0 ? `, behind ${proposal.ahead.join(", ")}` : ""}.
      </p>
      <DataTable
        caption="Loads"
        captionUnseen
        columns={[
          { key: "furnace", header: "Furnace" },
          { key: "from", header: "From", unit: "UTC" },
          { key: "to", header: "Cold", unit: "UTC" },
          { key: "sensors", header: "Sensors", align: "number" },
          { key: "points", header: "Setpoints", unit: "°C" },
        ]}
        rows={proposal.slots.map((slot, index) => ({
          key: String(index),
          cells: {
            furnace: slot.furnaceTag,
            from: moment(slot.startsAt),
            to: moment(slot.endsAt),
            sensors: slot.sensors,
            points: slot.setpointsCelsius.map((one) => pointText(one, view.fahrenheit[one])).join(", "),
          },
        }))}
        empty={<p>Nothing of it waits for a furnace of ours.</p>}
      />
      <p className="quiet">
        With {policy.dwellHours} h at a setpoint, {policy.loadingHours} h for loading,{" "}
        {policy.referencesPerLoad} places for references, somebody there from {policy.dayStartsHour} to{" "}
        {policy.dayEndsHour} h UTC on working days, and {policy.reviewDays} working days for evaluation and
        review. Heating and cooling by the furnace’s own record.
      </p>
    </div>
  );
}
