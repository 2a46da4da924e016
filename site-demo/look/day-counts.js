// Moves day counts on when a page is read later than the day it was built for. Calendar days by the
// reader's own year, month and day; nothing else on the page changes, and without this file it is still
// right "as of" its day. After a fortnight the garden has gone on without the page: nothing is counted any more,
// and the page says how old it is. Leads on from the old address of a page that moved.
(function () {
  "use strict";
  // The old address of a page that moved leads on at once, to the same place on the page.
  var on = document.getElementById("leads-on");
  if (on) { location.replace(on.href + location.hash); return; }

  var DAY = 86400000, FORTNIGHT = 14;
  var asOf = document.getElementById("as-of");
  if (!asOf) { return; }

  // A day as a number, the same in every time zone.
  function number(iso) {
    var parts = iso.split("-");
    return Date.UTC(+parts[0], +parts[1] - 1, +parts[2]) / DAY;
  }
  var now = new Date();
  var today = Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY;
  var later = today - number(asOf.getAttribute("datetime"));
  if (!(later > 0)) { return; }
  if (later > FORTNIGHT) {
    say("this page is " + later + " days old: it tells of the garden as it was then, its counts of days too");
    return;
  }

  var counts = document.querySelectorAll("[data-from]");
  for (var i = 0; i < counts.length; i += 1) {
    var count = counts[i];
    var days = today - number(count.getAttribute("data-from"));
    var after = count.getAttribute("data-after");
    count.value = String(days);
    count.textContent = count.getAttribute("data-before") + " " + days + (days === 1 ? " day" : " days") +
      (after && after.charAt(0) !== "," ? " " : "") + after;
  }
  if (counts.length) { say("days counted on to today, " + later + (later === 1 ? " day" : " days") + " later"); }

  function say(words) {
    var said = document.createElement("span");
    said.className = "moved";
    said.textContent = " (" + words + ")";
    asOf.parentNode.appendChild(said);
  }
}());
