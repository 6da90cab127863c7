import { judgeSeedsFrom } from "./judged-seeds.ts";

judgeSeedsFrom(40_000);
