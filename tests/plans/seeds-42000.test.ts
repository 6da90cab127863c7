import { judgeSeedsFrom } from "./judged-seeds.ts";

judgeSeedsFrom(42_000);
