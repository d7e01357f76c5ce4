import { Shape } from "@/app/_ui/shape";
import type { FormState } from "@/lib/web/form-state";

/** What the last submission came to, for the whole form. `ActionForm` shows it; nothing while idle. */
export function FormMessage({ state }: { readonly state: FormState }) {
  if (state.status === "idle") return null;
  const refused = state.status === "refused";
  return (
    <div
      className="notice"
      data-kind={refused ? "danger" : "done"}
      data-form-message=""
      role={refused ? "alert" : "status"}
      tabIndex={-1}
    >
      <Shape name={refused ? "square" : "disc"} />
      <div className="notice-body">
        <p className="notice-word">{refused ? "Not saved" : "Done"}</p>
        <p>{state.message}</p>
      </div>
    </div>
  );
}
