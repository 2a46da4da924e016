// Finds notes, crops, varieties, beds, their years, and seasons. Opens where a link leads to the page of names (or with "/"); on that page
// it stands open. Fetches the index when it is first wanted, as a script, so that it works from a folder too, and writes
// text as text.
(function () {
  "use strict";
  var top = new URL("../", document.currentScript.src).href;
  // Kinds of names, those that are wanted most first; varieties are told by their crops, which stand before them.
  var KINDS = ["crop", "variety", "bed", "trouble", "season", "person", "page"];
  var FOLDERS = { crop: "crops/", bed: "beds/", season: "seasons/" };
  // The pages every garden has, as pages/ways.py tells them; where a page is called otherwise, its name stands behind.
  var OURS = ("Now=index|Beds=beds/index|Map of the garden=map/index|Beds by years=years|Crops=crops/index|When to sow|Seed tin|How expectations turned out=turned-out|" +
    "Families|Rotation|Seasons=seasons/index|Weather and warmth=weather|Notes by date=by-date/index|Lessons|Walk=walk/index|Problems|Where the figures come from=sources|The data=data").split("|");
  var MOST_NAMES = 8, MOST_YEARS = 8, MOST_NOTES = 40;
  var MONTHS = "January February March April May June July August September October November December".split(" ");
  // The letters of a number: the first of them end it, the others go on (pages/find_numbers.py).
  var DIGITS = "!#$%()*+,-./0123456789:;=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[]^_`{|}";
  var here = document.getElementById("find-here"), held = null, panel = null, field, list, said, choices = {}, wanted = 0;

  // ---- the index

  function number(text, raw) {
    var ends = raw.ends, goOn = DIGITS.length - ends, found = [], high = 0;
    for (var i = 0; i < text.length; i += 1) {
      var digit = DIGITS.indexOf(text.charAt(i));
      if (digit >= ends) { high = high * goOn + digit - ends + 1; }
      else { found.push(high * ends + digit); high = 0; }
    }
    return found;
  }
  function rising(text, raw) {
    var before = -1;
    return number(text || "", raw).map(function (step) { before += step + 1; return before; });
  }
  function small(text) {
    return Array.from(text).reduce(function (sum, letter) { return sum + letter.charCodeAt(0) - 96; }, 0);
  }
  // How a season is written so many years before the newest: "2026", or "2026/27" in the south.
  function yearName(at, newest) {
    var year = parseInt(newest, 10) - at;
    return year + (newest.indexOf("/") < 0 ? "" : "/" + String(year + 1).slice(-2));
  }
  // What names of families end in is not written; one that ends otherwise stands whole behind a sign.
  function whole(text, ending) {
    return text.charAt(0) === "=" ? text.slice(1) : text + ending;
  }
  function called(text) { return text.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") + ".html"; }
  function lines(text) { return text ? text.split("\n") : []; }
  // The same rule as values/stems.py.
  function fold(text) {
    return text.toLowerCase().replace(/ß/g, "ss").replace(/ς/g, "σ").normalize("NFKD").replace(/[\p{M}'’]/gu, "");
  }
  var ODD = {
    leaves: "leaf", loaves: "loaf", halves: "half", knives: "knife", mice: "mouse", hoes: "hoe", cloches: "cloche",
    quiches: "quiche", earlies: "earlie", tatties: "tattie", chillies: "chilli", chilies: "chili"
  };
  var STOP = ("a about all an and are as at be because been but by could did do does for from had has have he her here him his how i if in into is it its just me my no not now of off " +
    "on only or our out she so than that the their them then there they this to too up us very was we were what when where which who will with would you your").split(" ");
  function singular(word) {
    if (Object.prototype.hasOwnProperty.call(ODD, word)) { return ODD[word]; }
    if (word.length < 4 || !/s$/.test(word) || /(ss|us|is)$/.test(word)) { return word; }
    if (/ies$/.test(word) && word.length > 4) { return word.slice(0, -3) + "y"; }
    return word.slice(0, /(oes|shes|ches|xes|sses)$/.test(word) ? -2 : -1);
  }
  function single(word) {
    var last = word.slice(-1);
    return last === word.slice(-2, -1) && "lsz".indexOf(last) < 0 ? word.slice(0, -1) : word;
  }
  function stem(word) {
    var plain = singular(fold(word));
    if (/ing$/.test(plain) && plain.length >= 6) { plain = single(plain.slice(0, -3)); }
    else if (/ed$/.test(plain) && plain.length >= 5) { plain = single(plain.slice(0, -2)); }
    return plain.length > 3 && /e$/.test(plain) ? plain.slice(0, -1) : plain;
  }
  function wordsOf(text) {
    return text.match(/[\p{L}\p{Nl}\u0300-\u036f]+(?:['’][\p{L}\p{Nl}\u0300-\u036f]+)*|\d+/gu) || [];
  }
  // The end of the rule.

  function read(raw) {
    var days = raw.days.split(" "), day = days[0] ? Date.parse(days[0]) / 86400000 : 0, from = 0;
    var made = {
      titles: [], whens: raw.whens, words: [],
      days: days[0] ? [day].concat(number(days[1] || "", raw).map(function (less) { day -= less; return day; })) : []
    };
    made.notes = lines(raw.notes).map(function (line, i) {
      var row = line.split("\t"), path = row[0];
      made.titles.push(row[1] === "=" ? made.titles[i - 1] : row[1] || "");
      // Where a page begins with the note's day, nothing stands for that.
      return "notes/" + (path.charAt(0) === "-" ? new Date(made.days[i] * 86400000).toISOString().slice(0, 10).replace("-", "/") : "") +
        path + ".html";
    });
    // Words have small letters; what stands between two are the notes of the one and what it shares with the other.
    var parts = raw.words.split(/([a-z\x80-\uffff]+)/), places = [], word = "";
    for (var i = 1; i < parts.length; i += 2) {
      word = word.slice(0, DIGITS.indexOf(parts[i - 1].slice(-1))) + parts[i];
      made.words.push(word);
      places.push(i + 2 < parts.length ? parts[i + 1].slice(0, -1) : parts[i + 1]);
    }
    // Words of titles are told by the titles.
    var known = new Map(made.words.map(function (word, i) { return [word, i]; })), titled = [];
    made.titles.forEach(function (title, note) {
      wordsOf(title).forEach(function (one) {
        var cut = stem(one), at = known.get(cut);
        if (at === undefined) { known.set(cut, at = made.words.push(cut) - 1); }
        (titled[at] = titled[at] || []).push(note);
      });
    });
    made.inNotes = function (i) { return rising(places[i], raw).concat(titled[i] || []); };
    made.names = [];
    KINDS.forEach(function (kind) {
      lines(raw.names[kind] || "").forEach(function (line) {
        var row = line.split("\t"), text = row[0], also = row[2] || "", to = row[3];
        if (kind === "variety") {
          var crop = made.names[number(row[1], raw)[0]];
          also = crop.text;
          to = crop.to;
        } else if (kind === "trouble" || kind === "person") {
          to = made.notes[number(row[1], raw)[0]];
        }
        made.names.push({
          kind: kind, text: text, also: also,
          to: to || (FOLDERS[kind] || "") + called(text),
          notes: kind === "crop" || kind === "bed" ? rising(row[1], raw) : [],
          plain: fold(text), own: stemmed(text), others: stemmed(also)
        });
      });
    });
    var lacks = rising(raw.lacks, raw);
    OURS.forEach(function (one, i) {
      var text = one.split("=")[0], to = one.split("=")[1];
      if (lacks.indexOf(i) < 0) {
        made.names.push({ kind: "page", text: text, also: "", to: to ? to + ".html" : called(text), notes: [], plain: fold(text), own: stemmed(text), others: [] });
      }
    });
    var crops = made.names.filter(function (name) { return name.kind === "crop"; });
    made.families = lines(raw.families).map(function (line) {
      var row = line.split("\t"), words = stemmed(whole(row[0], "aceae")).concat(stemmed(row[3]));
      rising(row[2], raw).forEach(function (crop) { crops[crop].others = crops[crop].others.concat(words); });
      return { phrase: fold(whole(row[1], " family")), word: words[0].plain };
    });
    // What stood in each bed, year by year: on the bed's page, or on a further one that is named.
    made.stood = [];
    // Small letters count years: before the crops those that have nothing, behind them those that have the same.
    var stood = raw.stood.split("\n"), beds = made.names.filter(function (name) { return name.kind === "bed"; });
    beds.forEach(function (bed, i) {
      rising(raw.kin[i], raw).forEach(function (other) { bed.others = bed.others.concat(beds[other].own); });
      (stood[i] || "").split("\t").forEach(function (chapter) {
        var told = chapter.split(" "), to = told.shift() || bed.to, at = 0;
        told.forEach(function (row) {
          var parts = /^([a-z]*)([^a-z]+)([a-z]*)$/.exec(row);
          var some = number(parts[2], raw).map(function (crop) { return crops[crop]; });
          at += small(parts[1]);
          for (var last = at + small(parts[3]); at <= last; at += 1) {
            var name = yearName(at, raw.newest);
            made.stood.push({ bed: bed, at: at, year: name, to: to + "#year-" + name.replace("/", "-"), crops: some });
          }
        });
      });
    });
    made.deeds = lines(raw.deeds).map(function (line) {
      var row = line.split("\t");
      return { text: row[0], notes: rising(row[1], raw), own: stemmed(row[0]), others: [] };
    });
    made.seasons = lines(raw.names.season).map(function (name, i) {
      var notes = [];
      for (var last = from + raw.seasons[i]; from < last; from += 1) { notes.push(from); }
      return { text: name, notes: notes };
    }).filter(function (season) { return season.notes.length; });
    return made;
  }
  function stemmed(text) {
    return wordsOf(fold(text || "")).map(function (word) { return { plain: word, stem: stem(word) }; });
  }

  // ---- finding

  // Whether two words are one slip apart: a letter more, less, another, or two in the wrong order.
  function isNear(a, b) {
    if (Math.abs(a.length - b.length) > 1) { return false; }
    var i = 0, j = 0;
    while (i < a.length && i < b.length && a.charAt(i) === b.charAt(i)) { i += 1; }
    while (j < a.length - i && j < b.length - i && a.charAt(a.length - 1 - j) === b.charAt(b.length - 1 - j)) { j += 1; }
    var left = a.slice(i, a.length - j), right = b.slice(i, b.length - j);
    return left.length < 2 && right.length < 2 ||
      left.length === 2 && right.length === 2 && left.charAt(0) === right.charAt(1) && left.charAt(1) === right.charAt(0);
  }
  // How well a typed word fits one of some words: 3 the word itself, 2 its beginning, 1 with one slip, 0 not at all.
  function fit(asked, words, isSlip) {
    var best = 0;
    words.forEach(function (word) {
      var found = 0;
      if (word.plain === asked.plain || word.stem === asked.stem) { found = 3; }
      else if (word.plain.indexOf(asked.plain) === 0) { found = 2; }
      else if (isSlip && asked.plain.length > 3 &&
        (isNear(asked.plain, word.plain) || isNear(asked.plain, word.plain.slice(0, asked.plain.length)))) { found = 1; }
      best = Math.max(best, found);
    });
    return best;
  }
  function rank(name, asked, isSlip) {
    var least = 3, all = 0;
    for (var i = 0; i < asked.length; i += 1) {
      var own = fit(asked[i], name.own, isSlip), other = fit(asked[i], name.others, isSlip);
      if (!own && !other) { return 0; }
      least = Math.min(least, Math.max(own, other));
      all += own > other || own === 3 ? 2 * own : other;
    }
    return least * 100 + all - name.own.length;
  }
  function ranked(asked, isSlip) {
    var found = byFit(asked, false);
    if (!found.length && isSlip) { found = byFit(asked, true); }
    // A year that is typed whole is that season before all else.
    function wanted(one) { return asked.length === 1 && isYear(asked[0]) && one.name.kind === "season" ? 1 : 0; }
    return found.sort(function (a, b) {
      return wanted(b) - wanted(a) || b.rank - a.rank || KINDS.indexOf(a.name.kind) - KINDS.indexOf(b.name.kind) ||
        b.name.notes.length - a.name.notes.length || (a.name.plain < b.name.plain ? -1 : 1);
    }).map(function (one) { return one.name; });
  }
  function byFit(asked, isSlip) {
    return held.names.map(function (name) { return { name: name, rank: rank(name, asked, isSlip) }; })
      .filter(function (one) { return one.rank > 0; });
  }
  // The years of beds in which what is typed stood: a year, and each other word the bed's or that of something in it.
  function yearsOf(told, isSlip) {
    var years = told.filter(isYear), words = told.filter(function (word) { return !isYear(word); });
    if (!words.length) { return []; }
    return held.stood.filter(function (one) {
      return (!years.length || years.some(function (word) { return one.year.indexOf(word.plain) === 0; })) &&
        words.every(function (word) {
          return [one.bed].concat(one.crops).some(function (name) { return fit(word, name.own, isSlip) || fit(word, name.others, isSlip); });
        });
    }).sort(function (a, b) { return a.at - b.at; });
  }
  function isYear(word) { return /^\d{4}$/.test(word.plain); }
  // The notes in which a typed word stands: by names, by seasons, by words that begin with it, else with one slip.
  function notesWith(asked) {
    var found = inWords(asked, function (word) {
      return word === asked.stem || word.indexOf(asked.plain) === 0;
    }, false);
    if (!found.size) {
      found = inWords(asked, function (word) { return word === asked.part; }, false);
    }
    if (!found.size && asked.plain.length > 3) {
      asked.slipped = true;
      found = inWords(asked, function (word) {
        return isNear(asked.plain, word) || isNear(asked.stem, word) || isNear(asked.plain, word.slice(0, asked.plain.length));
      }, true);
    }
    return found;
  }
  function inWords(asked, fits, isSlip) {
    var found = new Set();
    function add(note) { found.add(note); }
    held.words.forEach(function (word, i) { if (fits(word)) { held.inNotes(i).forEach(add); } });
    held.names.concat(held.deeds).forEach(function (name) {
      if (name.notes.length && (fit(asked, name.own, isSlip) || fit(asked, name.others, isSlip))) { name.notes.forEach(add); }
    });
    held.seasons.forEach(function (season) { if (season.text.indexOf(asked.plain) === 0) { season.notes.forEach(add); } });
    return found;
  }
  function within(notes, some) {
    return notes === null ? some : new Set(Array.from(some).filter(function (note) { return notes.has(note); }));
  }
  function find(text, chosen) {
    text = fold(text);
    held.families.forEach(function (family) { text = text.replace(family.phrase, family.word); });
    var asked = wordsOf(text).map(function (word) {
      var plain = fold(word);
      return { plain: plain, stem: stem(word), part: stem(plain.replace(/(i|in|e)$/, "")) };
    });
    var told = asked.filter(function (word) { return STOP.indexOf(word.plain) < 0; });
    if (told.length > 1) { told = told.filter(function (word) { return !/^(grew|grown?)$/.test(word.plain); }); }
    var notes = null;
    told.forEach(function (word) { notes = within(notes, notesWith(word)); });
    chosen.forEach(function (some) { notes = within(notes, new Set(some)); });
    var isFree = told.length && !chosen.length, names = isFree ? ranked(told, !notes.size || told.some(function (word) { return word.slipped; })) : [];
    var years = isFree && told.length > 1 && (told.some(isYear) || !names.length) ? yearsOf(told, false) : [];
    if (!years.length && isFree && told.length > 1 && !names.length) { years = yearsOf(told, true); }
    return {
      isAsked: told.length > 0 || chosen.length > 0,
      years: years,
      names: names,
      notes: Array.from(notes || []).sort(function (a, b) { return a - b; })
    };
  }

  // ---- showing

  function made(tag, text, kind) {
    var one = document.createElement(tag);
    if (text) { one.textContent = text; }
    if (kind) { one.className = kind; }
    return one;
  }
  function counted(count, word) { return count + " " + word + (count === 1 ? "" : "s"); }
  function dayOf(note) {
    if (held.whens[note]) { return held.whens[note]; }
    if (held.days[note] === undefined) { return "no date"; }
    var day = new Date(held.days[note] * 86400000);
    return day.getUTCDate() + " " + MONTHS[day.getUTCMonth()] + " " + day.getUTCFullYear();
  }
  function titleOf(note) {
    if (held.titles[note]) { return held.titles[note]; }
    function about(kind) {
      return held.names.filter(function (name) { return name.kind === kind && name.notes.indexOf(note) >= 0; })
        .map(function (name) { return name.text; });
    }
    var crops = about("crop"), beds = about("bed");
    var names = crops.slice(0, 3).concat(beds.slice(0, 2));
    var more = crops.length + beds.length - names.length;
    return names.join(", ") + (more > 0 ? " and " + more + " more" : "");
  }
  function line(to, text, beside) {
    var item = made("li"), link = made("a", text);
    link.href = top + to;
    item.appendChild(link);
    item.appendChild(document.createTextNode(" "));
    item.appendChild(made("span", beside, "aside"));
    return item;
  }
  function show() {
    if (!held || !panel) { return; }
    var chosen = Object.keys(choices).filter(function (key) { return choices[key].value; })
      .map(function (key) { return choices[key].notes[+choices[key].value]; });
    var found = find(field.value, chosen), rows = document.createDocumentFragment();
    found.years.slice(0, MOST_YEARS).forEach(function (one) {
      rows.appendChild(line(one.to, one.bed.text + ", " + one.year, one.crops.map(function (crop) { return crop.text; }).join(", ")));
    });
    found.names.slice(0, MOST_NAMES).forEach(function (name) {
      var beside = name.kind === "variety" ? name.also : name.kind + (name.notes.length ? ", " + counted(name.notes.length, "note") : "");
      rows.appendChild(line(name.to, name.text, beside));
    });
    found.notes.slice(0, MOST_NOTES).forEach(function (note) {
      rows.appendChild(line(held.notes[note], titleOf(note), dayOf(note)));
    });
    list.textContent = "";
    list.appendChild(rows);
    said.textContent = !found.isAsked ? (field.value.trim() ? "Every note has that; type a word of your own." : "") : !found.names.length && !found.notes.length && !found.years.length ? "Nothing found." :
      [found.years.length ? counted(found.years.length, "year") + " of beds" : "", found.names.length ? counted(found.names.length, "name") : "", counted(found.notes.length, "note")].filter(Boolean).join(", ") +
      (found.notes.length > MOST_NOTES ? ", the newest " + MOST_NOTES + " here." : ".");
  }

  // ---- the panel

  function choice(label, options) {
    var whole = made("label", label + " "), one = made("select");
    one.appendChild(made("option", "any")).value = "";
    one.notes = options.map(function (option) { return option.notes; });
    options.forEach(function (option, i) { one.appendChild(made("option", option.text)).value = String(i); });
    one.addEventListener("change", show);
    whole.appendChild(one);
    choices[label] = one;
    return whole;
  }
  function byText(a, b) { return a.text.localeCompare(b.text, "en"); }
  function ready() {
    held = read(window.leafmouldIndex);
    function named(kind) {
      return held.names.filter(function (name) { return name.kind === kind && name.notes.length; }).sort(byText);
    }
    var some = panel.querySelector(".choices");
    [["Year", held.seasons], ["Bed", named("bed")], ["Crop", named("crop")], ["What was done", held.deeds]].forEach(function (pair) {
      some.appendChild(choice(pair[0], pair[1]));
    });
    said.textContent = "";
    show();
  }
  function fetchIndex() {
    if (wanted) { return; }
    wanted = 1;
    said.textContent = "One moment …";
    var index = document.createElement("script");
    index.src = top + "look/find-index.js";
    index.onload = ready;
    index.onerror = function () { wanted = 0; said.textContent = "The index cannot be read. Everything stands from A to Z on a page of its own."; };
    document.head.appendChild(index);
  }
  function slashOpens() {
    try { return localStorage.getItem("leafmould-slash") !== "no"; } catch (refused) { return true; }
  }
  function makePanel() {
    panel = here || made("dialog", "", "find");
    panel.setAttribute("aria-label", "Find in the garden");
    var label = made("label", "Find in the garden", "find-field");
    field = made("input");
    field.type = "search";
    field.autocomplete = "off";
    field.spellcheck = false;
    label.appendChild(field);
    var close = made("button", "Close");
    close.type = "button";
    close.addEventListener("click", function () { panel.close(); });
    said = made("p", "", "said");
    said.setAttribute("role", "status");
    list = made("ul", "", "found");
    var foot = made("p", "", "aside"), all = made("a", "Everything from A to Z");
    all.href = top + "find.html";
    var slash = made("label", " “/” opens this", "slash"), box = made("input");
    box.type = "checkbox";
    box.checked = slashOpens();
    box.addEventListener("change", function () {
      try { localStorage.setItem("leafmould-slash", box.checked ? "yes" : "no"); } catch (refused) { box.checked = true; }
    });
    slash.insertBefore(box, slash.firstChild);
    if (!here) { foot.appendChild(all); }
    foot.appendChild(slash);
    [label, here ? null : close, made("div", "", "choices"), said, list, foot].forEach(function (part) {
      if (part) { panel.appendChild(part); }
    });
    field.addEventListener("focus", fetchIndex);
    field.addEventListener("input", show);
    panel.addEventListener("keydown", steer);
    if (!here) { document.body.appendChild(panel); }
  }
  // Arrows go from the field to what was found and along it; Enter in the field opens the first. Escape closes by itself.
  function steer(event) {
    var links = Array.from(list.querySelectorAll("a")), at = links.indexOf(document.activeElement);
    if (document.activeElement !== field && at < 0) { return; }
    if (event.key === "ArrowDown" && links.length) {
      links[Math.min(at + 1, links.length - 1)].focus();
    } else if (event.key === "ArrowUp" && at >= 0) {
      (at ? links[at - 1] : field).focus();
    } else if (event.key === "Enter" && at < 0 && links.length && !event.isComposing) {
      links[0].click();
    } else { return; }
    event.preventDefault();
  }
  function open() {
    if (!panel) { makePanel(); }
    if (!here && !panel.open) { panel.showModal(); }
    field.focus();
    field.select();
  }
  if (!window.HTMLDialogElement) { return; }
  if (here) { makePanel(); }
  document.addEventListener("click", function (event) {
    var link = event.target.closest ? event.target.closest("a[data-finds]") : null;
    if (!link || event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) { return; }
    event.preventDefault();
    open();
  });
  document.addEventListener("keydown", function (event) {
    var at = document.activeElement;
    if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || panel && panel.open) { return; }
    if (at && /^(INPUT|TEXTAREA|SELECT)$/.test(at.tagName) || !slashOpens()) { return; }
    event.preventDefault();
    open();
  });
}());
