package feedwitness.publish;

import feedwitness.site.Site;

/** The place. */
record SiteJson(String name, String zone) {
  static SiteJson of(Site site) {
    return new SiteJson(site.name(), site.zone().getId());
  }
}
