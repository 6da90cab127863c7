/** What stands against keeping plans on this device, in words: only a page that needs them fetches them. */
export const storage = {
  /** Why nothing, or not the last change, is kept: what happened, what is safe, what to do. */
  faults: {
    missing:
      "This browser has no storage to offer, so plans last only as long as this page. Save them to files.",
    denied:
      "The browser keeps nothing for this page (a private window, or storage switched off), so plans last only as long as this page. Save them to files.",
    blocked:
      "Another window holds the storage with an older version of this page. Close it and load this page again.",
    newer:
      "A newer version of this page has changed the storage. Close all its windows and load this page again to get that version.",
    unreadable:
      "The plan has grown beyond what a plan file can hold and could not be opened again. The plan is still on the bench: take the last change back.",
    full: "The disk, or this page's share of it, is full. The plan is still on the bench: save it to a file, or erase plans you don't need. It is tried again by itself.",
    damaged:
      "Something kept on this device can't be read; Your plans, in the menu, shows what. What is on the bench is safe: save it to a file.",
    lost: "The connection to the storage broke. The plan is still on the bench: save it to a file, then load this page again.",
    unforeseen:
      "The storage could not be begun with, for a reason that this page does not know, so plans last only as long as this page. Save them to files.",
  },
  addressCarries:
    "The plan on the bench, unless it is too long, stands in the address of this page, without its pictures: loading that address again brings it back.",
  updateReady: "A new version is ready.",
  updateNow: "Use it now",
  updateLater: "Later",
  benchUnkept: "What lies on the bench could not be kept, so it stays there. Save it to a file first.",
} as const;
