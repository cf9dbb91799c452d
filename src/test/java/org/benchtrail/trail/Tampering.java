package org.benchtrail.trail;

import org.benchtrail.platform.TestDatabase;

/** Changes of the trail and of files as somebody makes them who owns the tables and knows what he does. */
public final class Tampering {
    private Tampering() {}

    /** One statement, with the triggers of both tables out of its way. */
    public static void run(String sql, Object... parameters) {
        TestDatabase.run("alter table trail_entry disable trigger user");
        TestDatabase.run("alter table attachment disable trigger user");
        try {
            TestDatabase.run(sql, parameters);
        } finally {
            TestDatabase.run("alter table trail_entry enable trigger user");
            TestDatabase.run("alter table attachment enable trigger user");
        }
    }
}
