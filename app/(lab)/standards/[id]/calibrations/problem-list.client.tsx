"use client";
import { useFormState } from "@/app/_ui/form-context.client";

/** Everything that is wrong with a file that was refused, in the order of its lines. */
export function ProblemList() {
  const state = useFormState();
  if (state.status !== "refused") return null;
  const problems = Object.entries(state.fields).filter(([name]) => name.startsWith("problems."));
  if (problems.length === 0) return null;
  return (
    <ul aria-label="Problems in the file">
      {problems.map(([name, message]) => (
        <li key={name} className="field-error">
          {message}
        </li>
      ))}
    </ul>
  );
}
