import { judgeThousand } from "./judged-seeds.ts";

judgeThousand(41_000);
