const marks: Readonly<Record<string, { readonly state: string; readonly label: string }>> = {
  recorded: { state: "open", label: "Recorded" },
  accepted: { state: "active", label: "Accepted" },
  completed: { state: "done", label: "Completed" },
  cancelled: { state: "cancelled", label: "Cancelled" },
};

export const orderMarks = (state: string) => marks[state] ?? { state: "open", label: state };
