"""Goal + Chamber + Device -> Plan, before anything moves."""
