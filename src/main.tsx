import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./ui/app/App.tsx";

const place = document.getElementById("app");
if (!place) throw new Error("index.html has no element with the id app");
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
