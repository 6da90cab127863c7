import { judgeSeedsFrom } from "./judged-seeds.ts";

judgeSeedsFrom(41_000);
