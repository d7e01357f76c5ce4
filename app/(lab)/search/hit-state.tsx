import { StateMark } from "@/app/_ui/state-mark";
import { orderMarks } from "@/app/(lab)/orders/order-marks";
import { runMarks } from "@/app/(lab)/runs/run-marks";
import { sensorMarks } from "@/app/(lab)/sensors/sensor-marks";
import { asRunState } from "@/lib/domain/run/states";
import type { Hit } from "@/lib/domain/search/group-hits";

/** The state of a thing in the words and shapes of its own pages. */
export function HitState({ hit }: { readonly hit: Hit }) {
  switch (hit.kind) {
    // A quotation or a shipment has none of its own; its order's is not its state.
    case "customer":
    case "paper":
      return null;
    case "sensor":
      return <StateMark {...sensorMarks(hit.state)} />;
    case "order":
      return <StateMark {...orderMarks(hit.state)} />;
    case "run":
      return <StateMark {...runMarks(asRunState(hit.state))} />;
    default:
      return <StateMark state={hit.state} />;
  }
}
