package org.benchtrail.platform;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import org.jboss.logmanager.ExtLogRecord;
import org.jboss.logmanager.LogContext;

/** Hears everything that is logged until it is closed. */
public final class LogEar extends Handler implements AutoCloseable {
    private final List<String> heard = new CopyOnWriteArrayList<>();
    private final org.jboss.logmanager.Logger root = LogContext.getLogContext().getLogger("");

    public LogEar() {
        root.addHandler(this);
    }

    public String text() {
        return String.join("\n", heard);
    }

    @Override
    public void publish(LogRecord line) {
        heard.add(ExtLogRecord.wrap(line).getFormattedMessage() + " " + line.getThrown());
    }

    @Override
    public void flush() {}

    @Override
    public void close() {
        root.removeHandler(this);
    }
}
