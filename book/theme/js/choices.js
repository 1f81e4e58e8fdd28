// Day or lamp without a new page. The server keeps the choice; without this script its form does the same with a reload.

const form = document.querySelector("form.choices");

form?.addEventListener("submit", (event) => {
  const button = /** @type {SubmitEvent} */ (event).submitter;
  if (!(form instanceof HTMLFormElement) || !(button instanceof HTMLButtonElement) || button.name !== "light") return;
  event.preventDefault();
  const before = document.documentElement.dataset.light;
  document.documentElement.dataset.light = button.value;
  fetch(form.action, { method: "POST", body: new URLSearchParams({ light: button.value, back: "/" }), redirect: "manual" })
    .catch(() => { document.documentElement.dataset.light = before; });
});
