/*
Shows the course status on another page. Without it the page has a plain link; with it the link follows the status.

  <p id="course-status"><a href="https://club.example/">How the course is today</a></p>
  <script src="https://club.example/status.js" data-into="course-status" defer></script>

It asks for status.json beside itself (or for data-from="...") and for nothing else, sets no cookie and stores nothing.
What it shows is put in as text. When the file cannot be had, the link stays as it is.
*/
(function (script) {
  "use strict";
  var place = script && document.getElementById(script.getAttribute("data-into") || "course-status");
  if (!place || !window.fetch) return;
  var from = script.getAttribute("data-from") || new URL("status.json", script.src).href;
  fetch(from, { credentials: "omit", referrerPolicy: "no-referrer", cache: "no-cache" })
    .then(function (answer) {
      if (!answer.ok) throw new Error(String(answer.status));
      return answer.json();
    })
    .then(function (status) {
      // Another first number of the version: the fields may mean something else.
      if (!/^1\.\d+$/.test(status.version)) return;
      // A word holds until the end of its day; then the file has other words for it.
      var holds = Date.now() < Date.parse(status.fresh_until);
      var words = holds ? status.sentence : status.sentence_once_over;
      if (typeof words !== "string" || !words) return;
      var said = document.createElement("span");
      said.lang = status.club.language;
      said.dir = "auto";
      said.textContent = words;
      place.insertBefore(document.createTextNode(" "), place.firstChild);
      place.insertBefore(said, place.firstChild);
      place.setAttribute("data-course-status", holds ? "fresh" : "old");
    })
    .catch(function () {});
})(document.currentScript);
