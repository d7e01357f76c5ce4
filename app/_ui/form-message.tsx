import { Shape } from "@/app/_ui/shape";
import type { FormState } from "@/lib/web/form-state";

const looks = {
  refused: { kind: "danger", role: "alert", shape: "square" },
  caution: { kind: "caution", role: "alert", shape: "triangle" },
  done: { kind: "done", role: "status", shape: "disc" },
} as const;

type Told = Exclude<FormState, { status: "idle" }>;

const lookOf = (state: Told) =>
  state.status === "done" && state.caution ? looks.caution : looks[state.status];

const wordOf = (state: Told): string => {
  if (state.status === "refused") return "Not saved";
  return state.caution ?? "Done";
};

/** What the last submission came to, for the whole form. `ActionForm` shows it; nothing while idle. */
export function FormMessage({ state }: { readonly state: FormState }) {
  if (state.status === "idle") return null;
  const { kind, role, shape } = lookOf(state);
  return (
    <div className="notice" data-kind={kind} data-form-message="" role={role} tabIndex={-1}>
      <Shape name={shape} />
      <div className="notice-body">
        <p className="notice-word">{wordOf(state)}</p>
        <p>{state.message}</p>
      </div>
    </div>
  );
}
