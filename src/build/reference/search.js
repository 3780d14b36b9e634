// reference: narrows the list of functions to those whose name or words hold what is typed.

(() => {
  const box = document.getElementById("search");
  const found = document.getElementById("found");
  const entries = [...document.querySelectorAll("section li")];
  box.addEventListener("input", () => {
    const words = box.value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    for (const entry of entries) {
      const text = entry.textContent.toLowerCase();
      entry.hidden = !words.every((word) => text.includes(word));
      if (!entry.hidden) count++;
    }
    for (const section of document.querySelectorAll("section")) {
      section.hidden = ![...section.querySelectorAll("li")].some((entry) => !entry.hidden);
    }
    found.textContent =
      words.length === 0 ? "" : count === 0 ? "nothing found: try another word" : `${count} found`;
  });
})();
