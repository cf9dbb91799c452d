package org.benchtrail.exports;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.benchtrail.platform.Csv;

/** A record for each event, RFC 4180. */
final class CsvFormat implements EventFormat {
    private static final List<String> HEADS = List.of(
            "ticket", "category", "priority", "entry", "time", "kind", "refused", "step", "round", "person", "roles");

    @Override
    public void begin(About about, OutputStream file) throws IOException {
        write(Csv.PLAIN.line(HEADS), file);
    }

    @Override
    public void ticket(TicketEvents ticket, OutputStream file) throws IOException {
        StringBuilder lines = new StringBuilder();
        for (TicketEvent event : ticket.events()) {
            lines.append(Csv.PLAIN.line(List.of(
                    ticket.number(),
                    ticket.category(),
                    ticket.priority(),
                    String.valueOf(event.entry()),
                    event.at().toString(),
                    event.kind(),
                    event.refused() ? "yes" : "no",
                    event.before().step().name().toLowerCase(Locale.ROOT),
                    String.valueOf(event.before().round()),
                    event.person(),
                    String.join(" ", event.roles()))));
        }
        write(lines.toString(), file);
    }

    @Override
    public void end(OutputStream file) {}

    private static void write(String text, OutputStream file) throws IOException {
        file.write(text.getBytes(StandardCharsets.UTF_8));
    }
}
