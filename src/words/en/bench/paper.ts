/** Words of the sheet to pin up, as a part of the bench. */

export const paper = {
  paper: {
    what: "The whole work on one or two pages, to pin up beside the lap.",
    size: "Paper",
    print: "Print",
    save: "Save as a file",
    trueSize:
      "Print at 100 %, not fitted to the page: the width gauges are true to size. Check the 50 mm bar with a ruler.",
    preview: "The sheet as it will be printed",
    larger: "Show it in true size",
    fitted: "Fit it to the width",
    failed: "The sheet could not be made. Your plan is safe; load the page again.",
  },
} as const;
