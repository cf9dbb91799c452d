package org.benchtrail.training;

import java.util.List;

/**
 * A test of the coach, as it was stated and as far as it has come.
 *
 * @param size how it was reckoned
 * @param over how many have ended all their jobs, of how many it takes
 * @param broken jobs that were broken off for a live ticket and are left out
 * @param figure what it came to; empty before its size is reached
 * @param verdict in words; empty before
 * @param opened the seed of the devices and its salt; empty before
 * @param offered whether the viewer may take part
 * @param own the viewer's own jobs; empty if they take no part
 * @param goOn whether one of them is to be begun or gone on with
 * @param alone the viewer's own share without the coach; empty before their jobs are over
 */
record TrialView(
        int id,
        String stated,
        String question,
        String size,
        String stopRule,
        String leftOut,
        String analysis,
        String orderSeed,
        String devices,
        String over,
        long broken,
        String figure,
        String verdict,
        List<String> opened,
        boolean offered,
        List<Own> own,
        boolean goOn,
        String alone) {

    /** @param job 0 before it was begun */
    record Own(int place, String device, String coach, String state, int job) {}
}
