/** What keeping plans says: how saving stands, what is wrong with the storage, what became of a backup, links. */
export const storage = {
  status: {
    untouched: "Nothing to keep yet",
    waiting: "Changed",
    keeping: "Keeping",
    kept: "Kept on this device",
    "kept-as-copy": "Another tab has this plan. Your work is kept as a plan of its own.",
    "in-memory": "Kept only as long as this page is open. Save to a file.",
    failed: "Not kept on this device. Your work is still on the bench: save to a file.",
  },
  fault: {
    missing: "This browser has no storage for plans.",
    denied:
      "The browser refuses to keep anything here: a private window, or storage is switched off for this page.",
    blocked: "Another tab holds the storage. Close the other tabs of this page, then open it again.",
    full: "The space for this page is full. Delete plans you no longer need, or free space on the disk.",
    damaged: "The storage of this browser is damaged: what was read back is not what was written.",
    lost: "The connection to the storage broke. Open the page again.",
  },
  persistent: "The browser promised not to clear your plans by itself.",
  notPersistent: "The browser may clear your plans when space runs short. Save a backup now and then.",
  unreadable: (message: string) => `This plan can't be read any more: ${message}`,
  unreadableSave: "Save what is left of it to a file",
  benchUnkept: "What lies on the bench could not be kept. Save it to a file first, or go on without it.",
  restored: {
    added: (name: string) => `${name}: added`,
    "already-there": (name: string) => `${name}: is here already, unchanged`,
    "added-beside": (name: string) => `${name}: differs from the one here, both are kept`,
    unreadable: (name: string, why: string) => `${name}: can't be read (${why})`,
  },
  backup: "Save all plans to one file",
  restore: "Bring back plans from a backup",
  versionUnreadable: "This version can't be read any more.",
  link: "Link to this plan",
  linkHolds: "The link holds the whole plan. Nothing is sent anywhere when it is made.",
} as const;
