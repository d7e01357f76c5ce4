import { StateMark } from "@/app/_ui/state-mark";

const marks: Readonly<Record<string, { state: string; label: string }>> = {
  planned: { state: "draft", label: "Planned" },
  measuring: { state: "active", label: "Being measured" },
  submitted: { state: "waiting", label: "Waits for another person" },
  returned: { state: "returned", label: "Returned" },
  accepted: { state: "issued", label: "Accepted" },
  abandoned: { state: "cancelled", label: "Abandoned" },
};

/** Where the measuring of a characterisation stands. */
export function RunStateMark({ state }: { readonly state: string }) {
  return <StateMark {...(marks[state] ?? { state, label: state })} />;
}
