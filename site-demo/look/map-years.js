// A slider over the links to the maps of other years. Without this file the links are all there is to it.
(function () {
  "use strict";
  var ways = document.getElementById("map-years");
  if (!ways) { return; }
  var years = ways.querySelectorAll("li");
  var slider = document.createElement("input");
  slider.type = "range";
  slider.min = "0";
  slider.max = String(years.length - 1);
  slider.setAttribute("aria-label", "Year of the map; Enter leads there");

  function name(at) { return years[at].textContent; }
  function tell() { slider.setAttribute("aria-valuetext", name(+slider.value)); }
  for (var i = 0; i < years.length; i += 1) {
    if (years[i].querySelector("[aria-current]")) { slider.value = String(i); }
  }
  tell();
  slider.addEventListener("input", tell);

  // It leads on when it is let go of, or at Enter: arrows alone only choose.
  function lead() {
    var link = years[+slider.value].querySelector("a");
    if (link) { location.href = link.href; }
  }
  slider.addEventListener("pointerup", lead);
  slider.addEventListener("keydown", function (event) { if (event.key === "Enter") { lead(); } });
  ways.insertBefore(slider, ways.firstChild);
}());
