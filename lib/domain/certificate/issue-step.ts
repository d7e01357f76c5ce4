/** Of making a signed certificate's files, in this order. */
export const issueStepNames = ["render", "attach", "seal", "store"] as const;
export type IssueStepName = (typeof issueStepNames)[number];

export const issueStepLabels: Readonly<Record<IssueStepName, string>> = {
  render: "Render",
  attach: "Attach the data",
  seal: "Seal",
  store: "Store",
};
