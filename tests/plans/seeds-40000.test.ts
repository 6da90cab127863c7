import { judgeThousand } from "./judged-seeds.ts";

judgeThousand(40_000);
