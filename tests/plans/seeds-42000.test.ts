import { judgeThousand } from "./judged-seeds.ts";

judgeThousand(42_000);
