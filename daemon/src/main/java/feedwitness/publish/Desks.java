package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.CheckBench;
import feedwitness.engine.DataDesk;
import feedwitness.engine.FeedLineDesk;
import feedwitness.engine.LiveView;
import feedwitness.engine.ProbeDesk;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.History;
import feedwitness.publish.message.MessageDesk;

/** All that the interface asks. */
public record Desks(
    LiveView live,
    History history,
    ProbeDesk probes,
    DataDesk data,
    AlarmDesk alarms,
    EvidenceHistory evidence,
    MessageDesk messages,
    CheckBench checks,
    FeedLineDesk lines) {}
