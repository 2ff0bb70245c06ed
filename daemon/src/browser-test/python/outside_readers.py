"""Reads the feed and the metrics of a running service with readers not written here.

Usage: outside_readers.py URL. Debian packages python3-feedparser and python3-prometheus-client.
Exit code 0 and a line of figures if all is as it should be, otherwise a reason.
"""

import math
import sys
import urllib.request

import feedparser
from prometheus_client import openmetrics, parser
import prometheus_client.openmetrics.parser  # noqa: F401  (fills the name openmetrics.parser)


def fetch(url, accept):
    request = urllib.request.Request(url, headers={"Accept": accept})
    with urllib.request.urlopen(request, timeout=20) as answer:
        return answer.headers["Content-Type"], answer.read().decode("utf-8")


def require(holds, words):
    if not holds:
        sys.exit("outside reader: " + words)


def samples(families):
    return {
        (sample.name, tuple(sorted(sample.labels.items()))): sample.value
        for family in families
        for sample in family.samples
    }


def metrics(base):
    accept = "application/openmetrics-text;version=1.0.0,text/plain;version=0.0.4;q=0.5"
    media_type, text = fetch(base + "metrics", accept)
    require(media_type.startswith("application/openmetrics-text"), media_type)
    families = list(openmetrics.parser.text_string_to_metric_families(text))
    by_open = samples(families)
    kinds = {family.name: family.type for family in families}
    require(kinds["feedwitness_samples_dropped"] == "counter", str(kinds))
    require(kinds["feedwitness_build"] == "info", str(kinds))
    media_type, text = fetch(base + "metrics", "text/plain")
    require(media_type == "text/plain; version=0.0.4; charset=utf-8", media_type)
    by_older = samples(parser.text_string_to_metric_families(text))
    require(set(by_open) == set(by_older), "the two formats differ: %s" % (set(by_open) ^ set(by_older)))
    point = (("point", "drain"),)
    value = by_open[("feedwitness_conductivity25_millisiemens_per_centimetre", point)]
    require(math.isclose(value, 2.9, abs_tol=1e-6), "conductivity is %s" % value)
    alarm = (("kind", "conductivity-high"), ("priority", "high"), ("subject", "drain"))
    require(by_open[("feedwitness_alarm_active", alarm)] == 1, "the alarm is not there")
    return len(by_open)


def feed(base):
    ids = {}
    address = base + "alarms.atom"
    documents = 0
    while address:
        read = feedparser.parse(address)
        require(not read.bozo, "%s: %s" % (address, read.get("bozo_exception")))
        require(read.version == "atom10", read.version)
        require(bool(read.feed.id and read.feed.title and read.feed.updated_parsed), str(read.feed))
        for entry in read.entries:
            require(bool(entry.id and entry.title and entry.updated_parsed and entry.content), str(entry))
            require(ids.setdefault(entry.id, entry.title) == entry.title, "an id means two things")
        documents += 1
        require(documents < 100, "the archives go round in a circle")
        before = [link.href for link in read.feed.links if link.rel == "prev-archive"]
        address = before[0] if before else None
    require(any("Strength too high, raised" in title for title in ids.values()), str(ids))
    return documents, len(ids)


base = sys.argv[1]
numbers = metrics(base)
documents, entries = feed(base)
print("%d samples in two formats; %d entries in %d feed documents" % (numbers, entries, documents))
