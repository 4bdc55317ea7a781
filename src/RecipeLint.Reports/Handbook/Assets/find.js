"use strict";
// The search of the index page. It works from a folder: the words stand in find-words.js, nothing is fetched.
(function () {
  var rules = window.handbookRules || [];
  var box = document.getElementById("find");
  var query = document.getElementById("query");
  var found = document.getElementById("found");
  var results = document.getElementById("results");
  if (!box || !query || !found || !results || rules.length === 0) {
    return;
  }

  var entries = rules.map(function (rule) {
    return {
      id: rule[0], name: rule[1], level: rule[2], title: rule[3],
      head: (rule[0] + " " + rule[1] + " " + rule[1].replace(/-/g, " ") + " " + rule[3]).toLowerCase().split(/[^a-z0-9]+/),
      words: rule[4].split(" ")
    };
  });

  // The subscripts and dots people copy out of a formula.
  function plain(text) {
    return text.toLowerCase().replace(/[₀-₉]/g, function (c) { return String(c.charCodeAt(0) - 0x2080); });
  }

  function best(words, term) {
    var score = 0;
    for (var i = 0; i < words.length; i++) {
      if (words[i] === term) {
        return 2;
      }
      if (words[i].indexOf(term) === 0) {
        score = 1;
      }
    }
    return score;
  }

  // Every term must be met; a number or a name counts more than a word of the text.
  function score(entry, terms) {
    var sum = 0;
    for (var i = 0; i < terms.length; i++) {
      var here = 4 * best(entry.head, terms[i]) + best(entry.words, terms[i]);
      if (here === 0) {
        return 0;
      }
      sum += here;
    }
    return sum;
  }

  function part(kind, name, text) {
    var element = document.createElement(kind);
    if (name) {
      element.className = name;
    }
    element.textContent = text;
    return element;
  }

  function item(entry) {
    var link = document.createElement("a");
    link.href = "rules/" + entry.name + ".html";
    var meta = part("span", "meta", entry.id + " ");
    meta.appendChild(part("span", "stamp " + entry.level, entry.level));
    link.append(part("b", "", entry.name), " ", meta, " ", part("span", "title", entry.title));
    var line = document.createElement("li");
    line.appendChild(link);
    return line;
  }

  function search() {
    var terms = plain(query.value).split(/[^a-z0-9]+/).filter(function (t) { return t.length > 0; });
    results.textContent = "";
    if (terms.length === 0) {
      found.textContent = "";
      return;
    }
    var hits = entries
      .map(function (entry, index) { return { entry: entry, index: index, score: score(entry, terms) }; })
      .filter(function (hit) { return hit.score > 0; })
      .sort(function (a, b) { return b.score - a.score || a.index - b.index; });
    found.textContent = hits.length === 0
      ? "No rule holds that. Try a shorter word, or what you see in the bottle."
      : hits.length === 1 ? "1 rule" : hits.length + " rules";
    hits.slice(0, 25).forEach(function (hit) { results.appendChild(item(hit.entry)); });
  }

  // The address keeps the words, so that the way back from a card leads to the same answer.
  function remember() {
    try {
      window.history.replaceState(null, "", query.value ? "#find=" + encodeURIComponent(query.value) : "#find");
    } catch (error) {
      // A browser that allows this to no page from a folder: the search works all the same.
    }
  }

  // index.html#find=gypsum opens with an answer, so that a search can be kept or sent.
  function fromAddress() {
    var match = /^#find=(.*)$/.exec(window.location.hash);
    if (match) {
      try {
        query.value = decodeURIComponent(match[1]);
      } catch (error) {
        query.value = "";
      }
      search();
    } else if (window.location.hash === "#find") {
      query.focus();
    }
  }

  box.hidden = false;
  query.addEventListener("input", function () {
    search();
    remember();
  });
  window.addEventListener("hashchange", fromAddress);
  window.addEventListener("pageshow", search);
  fromAddress();
  search();
}());
