package org.benchtrail.exports;

import java.util.ArrayList;
import java.util.List;

/** A reader of comma-separated values written after RFC 4180, section 2, and not after our writer. */
final class Records4180 {
    private Records4180() {}

    static List<List<String>> read(String file) {
        List<List<String>> records = new ArrayList<>();
        List<String> record = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < file.length(); i++) {
            char c = file.charAt(i);
            if (quoted) {
                if (c != '"') {
                    field.append(c);
                } else if (i + 1 < file.length() && file.charAt(i + 1) == '"') {
                    field.append('"');
                    i++;
                } else {
                    quoted = false;
                }
            } else if (c == '"' && field.length() == 0) {
                quoted = true;
            } else if (c == ',' || (c == '\r' && file.startsWith("\r\n", i))) {
                record.add(field.toString());
                field.setLength(0);
                if (c == '\r') {
                    records.add(record);
                    record = new ArrayList<>();
                    i++;
                }
            } else {
                field.append(c);
            }
        }
        return records;
    }
}
